#include "app/words/cautions.h"

namespace hither {

const std::string& planningAidOnly() {
    static const std::string text =
        "Planning aid only. Final placement is for a qualified professional together with the person and those who care for "
        "them, under local rules and the instructions of the chair, bed and part makers.";
    return text;
}

const std::vector<std::string>& cautions() {
    static const std::vector<std::string> list = {
        "First trial supervised.",
        "Nothing that can fall on or trap the person.",
        "On beds: no new gap that can trap head or neck; never weaken or block a rail's own release.",
        "Cables short, along the mount, away from neck and wheels, with a connection that pulls apart.",
        "No sharp or hard edge where the body can strike it; skin checked for pressure.",
        "Brakes, joystick, transfers and the way out stay free.",
        "Remove the mount before vehicle transport unless the whole system was crash tested.",
        "Check tightness daily and after each knock. Stop when anything moves, cracks or hurts.",
    };
    return list;
}

}  // namespace hither
