#include <cmath>
#include <map>
#include <optional>

#include "core/checks/finding.h"
#include "core/units/tolerances.h"

namespace hither {
namespace {

/// English sentences by key. {name} is a word of the finding, a fact, its {value} or its {limit}.
/// a, b, c are its subjects in order.
const std::map<std::string, std::string>& sentences() {
    static const std::map<std::string, std::string> table = {
        {"fit.tube.fits", "{a} closes on {b}: the tube is {value}, it takes {min} to {max}."},
        {"fit.tube.too_small", "{a} does not close on {b}: the tube is {value}, it takes {min} to {max}."},
        {"fit.tube.too_large", "{a} does not open far enough for {b}: the tube is {value}, it takes {min} to {max}."},
        {"fit.tube.size_unknown", "Whether {a} fits {b} is not known: measure the tube's outside diameter with a caliper."},
        {"fit.tube.range_unknown", "Whether {a} fits {b} is not known: measure which tube sizes it takes."},
        {"fit.section", "{a} is not made for {section} tube, and {b} is {section}."},
        {"fit.plate.fits", "{a} closes on {b}: the plate is {value} thick, it takes {min} to {max}."},
        {"fit.plate.too_small", "{a} does not close on {b}: the plate is {value} thick, it takes {min} to {max}."},
        {"fit.plate.too_large", "{a} does not open far enough for {b}: the plate is {value} thick, it takes {min} to {max}."},
        {"fit.plate.size_unknown", "Whether {a} fits {b} is not known: measure the plate's thickness at its edge."},
        {"fit.plate.range_unknown", "Whether {a} fits {b} is not known: measure which thickness it takes."},
        {"fit.cloth.fits", "{a} takes {b}: it is {value} thick, the clip takes up to {max}."},
        {"fit.cloth.too_large", "{a} does not take {b}: it is {value} thick, the clip takes up to {max}."},
        {"fit.cloth.too_small", "{a} does not hold {b}: it is {value} thick."},
        {"fit.cloth.size_unknown", "Whether {a} takes {b} is not known: measure how thick the folded cloth is."},
        {"fit.cloth.range_unknown", "Whether {a} takes {b} is not known: measure how thick a cloth it takes."},
        {"fit.throat.fits", "{a} reaches {value} over {b}, where {limit} is free."},
        {"fit.throat.too_deep", "{a} reaches {value} over {b}, but only {limit} is free there."},
        {"fit.footprint.fits", "The foot of {a} lies wholly on {b}."},
        {"fit.footprint.overhangs", "The foot of {a} stands out {value} over the border of {b}."},
        {"fit.span.inside", "{a} sits wholly on {b}."},
        {"fit.span.over_end", "{a} sits {value} over the end of {b}."},
        {"fit.blocked", "{a} sits {value} into a stretch of {b} that may not be used: {why}."},
        {"fit.neighbour.apart", "{a} and {b} have room side by side on {c}."},
        {"fit.neighbour.overlap", "{a} and {b} need {limit} from middle to middle on {c}, and are {value} apart."},
        {"fit.mate.fits", "{a} goes together with {b}."},
        {"fit.mate.screws", "{b} screws on to {a}: {value} turns engage ({engaged}), {limit} are needed."},
        {"fit.mate.interface", "{a} and {b} do not go together: {outlet} against {base}."},
        {"fit.mate.gender", "{a} and {b} do not go together: both are of the same sort ({outlet}, {base})."},
        {"fit.mate.thread", "{a} and {b} do not go together: {outlet} against {base}."},
        {"fit.mate.pattern", "The holes of {a} and {b} do not agree: {outlet} against {base}."},
        {"fit.mate.bottoms", "The screw between {a} and {b} is {value} long and the thread is {limit} deep: it meets the bottom before it clamps."},
        {"fit.mate.turns", "Only {value} turns engage between {a} and {b} ({engaged}); {limit} are needed or the thread strips."},
        {"fit.mate.length_unknown", "Whether {b} screws far enough on to {a} is not known: measure the screw's length and the thread's depth."},
        {"fit.thread_strength.holds", "The thread between {a} and {b} ({material}) holds {value}, of which {limit} are asked ({factor} times the pull of {load})."},
        {"fit.thread_strength.strips", "The thread between {a} and {b} ({material}) holds {value}; {limit} are asked for a pull of {load}."},
        {"fit.thread_strength.material_unknown", "How much the thread between {a} and {b} holds is not known: find out what both are made of."},
        {"fit.thread_strength.load_unknown", "How much pulls at the thread between {a} and {b} is not known: weigh the parts beyond it."},
        {"fit.rated_load.carries", "{a} carries {value} and is rated for {limit}."},
        {"fit.rated_load.too_heavy", "{a} carries {value} but is rated for {limit}."},
        {"fit.rated_load.limit_unknown", "Whether {a} may carry the {value} beyond it is not known: find its rated load, or hang a known mass on it."},
        {"fit.rated_load.mass_unknown", "How much {a} carries is not known: weigh the parts beyond it on a kitchen scale."},
        {"fit.keep_free.covered", "{a} stands {value} into what must stay free on {b}: {zone}."},
        {"fit.keep_free.free", "Nothing of the mount is in the way of what must stay free on {a}: {zone}."},
        {"fit.no_switch", "{a} has no switch at its end yet."},
        {"reach.site.there", "{a} stands {value} from {b}; {limit} is allowed."},
        {"reach.site.short", "{a} stands {value} from {b}; only {limit} is allowed."},
        {"reach.no_site", "{a} serves no site yet: say which one it is for."},
        {"reach.range", "{joint} of {a} stands at {value}; its range ends at {limit}."},
        {"reach.range.bend", "{a} is bent to a radius of {value}; it must not be bent tighter than {limit}."},
        {"reach.detent", "{joint} of {a} stands at {value}, between its clicks of {step}; the nearest click is {limit}."},
        {"reach.range_end.away", "Every joint has room on both sides: the least is {value} of its range ({joint} of {a})."},
        {"reach.range_end.near", "{joint} of {a} has only {value} of its range left: a small correction may not be possible."},
        {"aim.faces", "{a} faces the movement within {value}; {whose} {limit}."},
        {"aim.faces.force", "{a} faces the movement within {value}; {whose} {limit}. Of {force}, {arrives} arrive on it."},
        {"aim.off", "{a} is turned {value} from the movement; {whose} {limit}."},
        {"aim.off.force", "{a} is turned {value} from the movement; {whose} {limit}. Of {force}, only {arrives} arrive on it."},
        {"clearance.near", "{a} is {value} from {b}; {limit} is asked."},
        {"clearance.overlaps", "{a} and {b} overlap by {depth}."},
        {"clearance.free.body", "Nearest to the body is {a}: {value} from {b}; {limit} is asked."},
        {"clearance.free.support", "Nearest to the support is {a}: {value} from {b}; {limit} is asked."},
        {"clearance.free.mount", "Nearest to another mount is {a}: {value} from {b}; {limit} is asked."},
        {"clearance.free.keep_out", "Nearest to a volume kept free is {a}: {value} from {b}; {limit} is asked."},
        {"movement.near", "With {setting}, {a} is only {value} from {b}; {limit} is asked."},
        {"movement.overlaps", "With {setting}, {a} and {b} overlap by {depth}."},
        {"movement.free", "Over the whole movement {a} comes no nearer to {b} than {value} ({setting}); {limit} is asked."},
        {"movement.site.together", "{b} and {a} move together."},
        {"movement.site.stays", "As the support moves, {b} is never more than {value} from the switch of {a}; {limit} is allowed."},
        {"movement.site.lost", "With {setting}, {b} is {value} away from the switch of {a}; only {limit} is allowed. The mount is fixed to a part that does not move with the person."},
        {"remedy.insert", "Add {insert} between them ({price})."},
        {"remedy.insert_unpriced", "Add {insert} between them."},
        {"remedy.solve", "Let the joints be set so that the switch meets the site."},
        {"remedy.choose_group", "Fix the mount to a part that moves with the person, or say that the support stays as it is."},
    };
    return table;
}

std::string number(double value, int digits) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", digits, value);
    return text;
}

std::string printed(double value, Measure measure, UnitSystem system) {
    switch (measure) {
        case Measure::length: return printLength(value, system, std::abs(value) < 0.1 ? 1 : 0);
        case Measure::angle: return printAngle(value, std::abs(value) < radians(10.0) ? 1 : 0);
        case Measure::mass: return printMass(value, system);
        case Measure::force: return printForce(value, system, std::abs(value) < 100.0 ? 1 : 0);
        case Measure::moment: return printMoment(value, system);
        case Measure::ratio: return number(100.0 * value, 0) + " %";
        case Measure::count: return number(value, std::abs(value - std::round(value)) < 1e-9 ? 0 : 1);
        case Measure::none: return number(value, 2);
    }
    return number(value, 2);
}

/// With `more` decimals than a print shows at the least; inches as decimals.
std::string finely(double value, Measure measure, UnitSystem system, int more) {
    const bool metric = system == UnitSystem::metric;
    switch (measure) {
        case Measure::length: return metric ? number(1000.0 * value, 1 + more) + " mm" : number(value / 0.0254, 2 + more) + " in";
        case Measure::angle: return printAngle(value, 1 + more);
        case Measure::mass: return metric ? number(1000.0 * value, more) + " g" : number(value / 0.45359237 * 16.0, 1 + more) + " oz";
        case Measure::force: return printForce(value, system, 1 + more);
        case Measure::moment: return printMoment(value, system, 2 + more);
        case Measure::ratio: return number(100.0 * value, more) + " %";
        case Measure::count: return number(value, 1 + more);
        case Measure::none: return number(value, 2 + more);
    }
    return number(value, 2 + more);
}

/// A value and its limit that differ must not print alike ("13.0 mm, it takes 13.0 mm"): how many
/// more decimals both need; nothing when the usual print tells them apart.
std::optional<int> moreDecimals(const Finding& f, UnitSystem system) {
    if (!f.value || !f.limit || std::abs(*f.value - *f.limit) <= tolerance::limitSlack) return std::nullopt;
    if (printed(*f.value, f.measure, system) != printed(*f.limit, f.measure, system)) return std::nullopt;
    for (int more = 0; more < 6; ++more)
        if (finely(*f.value, f.measure, system, more) != finely(*f.limit, f.measure, system, more)) return more;
    return 6;
}

/// Prints a number of the finding so that its value and its limit can be told apart.
std::string shownIn(const Finding& f, double value, Measure measure, UnitSystem system, const std::optional<int>& more) {
    const bool fine = more && measure == f.measure && (value == *f.value || value == *f.limit);
    return fine ? finely(value, measure, system, *more) : printed(value, measure, system);
}

std::string filled(const std::string& pattern, const Finding& f, UnitSystem system) {
    const std::optional<int> more = moreDecimals(f, system);
    const auto shown = [&](double value, Measure measure) { return shownIn(f, value, measure, system, more); };
    std::string out;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const std::size_t end = pattern[i] == '{' ? pattern.find('}', i) : std::string::npos;
        if (end == std::string::npos) { out += pattern[i]; continue; }
        const std::string name = pattern.substr(i + 1, end - i - 1);
        i = end;
        if (name == "value") out += f.value ? shown(*f.value, f.measure) : "an unknown amount";
        else if (name == "limit") out += f.limit ? shown(*f.limit, f.measure) : "an unknown amount";
        else if (const auto w = f.words.find(name); w != f.words.end()) out += w->second;
        else if (const auto n = f.facts.find(name); n != f.facts.end()) out += shown(n->second.first, n->second.second);
    }
    if (!out.empty() && out[0] >= 'a' && out[0] <= 'z') out[0] = static_cast<char>(out[0] - 'a' + 'A');
    return out;
}

}  // namespace

std::string sentence(const Finding& finding, UnitSystem system) {
    const auto found = sentences().find(finding.key);
    return found == sentences().end() ? finding.key : filled(found->second, finding, system);
}

std::string valueWords(const Finding& finding, UnitSystem system) {
    return finding.value ? shownIn(finding, *finding.value, finding.measure, system, moreDecimals(finding, system)) : std::string{};
}

std::string limitWords(const Finding& finding, UnitSystem system) {
    return finding.limit ? shownIn(finding, *finding.limit, finding.measure, system, moreDecimals(finding, system)) : std::string{};
}

std::string remedySentence(const Finding& finding, UnitSystem system) {
    if (!finding.remedy) return {};
    const auto found = sentences().find(finding.remedy->key);
    return found == sentences().end() ? finding.remedy->key : filled(found->second, finding, system);
}

}  // namespace hither
