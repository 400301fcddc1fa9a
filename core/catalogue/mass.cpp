#include "core/catalogue/part.h"

namespace hither {

Figure Part::totalMass_kg() const {
    Figure total;
    bool any = false;
    double sum = 0;
    Basis basis{BasisKind::measured, {}};
    const auto add = [&](const Figure& mass) {
        if (!mass.known()) return false;
        sum += *mass.value;
        // The weakest basis speaks for the sum, with its own source.
        if (!any || basis.kind < mass.basis.kind) basis = mass.basis;
        any = true;
        return true;
    };
    for (const Element& element : elements) {
        if (const auto* rigid = std::get_if<RigidElement>(&element.what); rigid && !add(rigid->mass_kg)) return {};
        if (const auto* bend = std::get_if<BendElement>(&element.what); bend && !add(bend->mass_kg)) return {};
    }
    if (any) total = {sum, basis};
    return total;
}

}  // namespace hither
