#include <catch2/catch.hpp>

#include <cmath>

#include "app/widgets/dimension_marks.h"

using namespace hither;

// The geometry that a dimension leads to is made by core; the marks are read off that geometry. So what a
// mark measures must be the dimension again, whatever value is typed.
TEST_CASE("What a dimension's mark measures is the dimension") {
    int marked = 0, without = 0;
    for (const SupportKind& kind : supportKinds()) {
        for (const SupportDimension& d : kind.dimensions) {
            for (const double share : {-1.0, 0.02, 0.5, 0.98}) {
                SupportSpec spec;
                spec.id = "it";
                spec.kind = kind.kind;
                if (kind.kind == "chair-power") spec.dimensions["tilt_range"] = 0.5;
                const double value = share < 0 ? d.standard : d.min + share * (d.max - d.min);
                if (share >= 0) spec.dimensions[d.key] = value;
                const SupportMade made = makeSupport(spec);
                if (!made.support) continue;   // some pairs of dimensions exclude each other
                const auto mark = dimensionMark(*made.support, d.key);
                CAPTURE(kind.kind, d.key, value);
                const double is = share < 0 && spec.dimensions.count(d.key) ? spec.dimensions[d.key] : value;
                if (!mark) { CHECK(is == 0); ++without; continue; }
                ++marked;
                CHECK(mark->measured() == Approx(std::abs(is)).margin(1e-9));
                const Vec3 line = mark->angle ? Vec3(mark->from.cross(mark->to)) : Vec3(mark->b - mark->a);
                // It can be seen from where it is drawn: a line has all its length in the drawing.
                if (!mark->angle) {
                    const double seen = mark->drawnFrom == DrawnFrom::side ? std::hypot(line.x(), line.z()) : mark->drawnFrom == DrawnFrom::front ? std::hypot(line.y(), line.z()) : std::hypot(line.x(), line.y());
                    CHECK(seen == Approx(line.norm()).margin(1e-9));
                } else {
                    CHECK(line.cross(Vec3::UnitY()).norm() < 1e-9);
                }
            }
        }
    }
    CHECK(marked > 300);
    CHECK(without < 40);
}
