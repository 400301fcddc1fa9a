#include "core/ways/ways.h"

namespace hither {

std::string freedomName(const Chain& chain, const Freedom& f) {
    switch (f.of) {
        case Freedom::Of::along: return "along the rail or edge";
        case Freedom::Of::around: return "round the rail";
        case Freedom::Of::x: return "forward on the face";
        case Freedom::Of::y: return "sideways on the face";
        case Freedom::Of::yaw: return "turn on the face";
        case Freedom::Of::clocking: return "turn against the part before it";
        case Freedom::Of::joint: break;
    }
    std::string name = f.joint;
    for (char& c : name) if (c == '_' || c == '-') c = ' ';
    static const char* const ball[] = {", swing a", ", swing b", ", twist"};
    static const char* const bend[] = {", first arc x", ", first arc y", ", middle arc x", ", middle arc y", ", last arc x", ", last arc y"};
    for (const Element& e : chain.parts[static_cast<std::size_t>(f.part)]->elements) {
        if (e.name != f.joint) continue;
        if (e.freedoms() == 3) name += ball[f.component % 3];
        if (e.freedoms() == 6) name += bend[f.component % 6];
    }
    return name;
}

}  // namespace hither
