#include "app/dialogs/part_figures_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace hither {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("hither::PartFigures", text); }

FigureWords gripWords(const Part& part, const QString& index, const QString& what) {
    const auto i = index.toUInt();
    if (i >= part.grips.size()) return {};
    const Grip& grip = part.grips[i];
    FigureWords words;
    if (std::holds_alternative<RailGrip>(grip)) {
        if (what == "min") words = {tr("Smallest tube it closes on"), tr("Close it as far as it goes and measure the opening with a caliper."), NumberOf::length};
        if (what == "max") words = {tr("Largest tube it closes on"), tr("Open it as far as it holds and measure the opening with a caliper."), NumberOf::length};
        if (what == "hold_torque") words = {tr("Moment it holds round the tube"), tr("Fix an arm of known length square to the tube and pull its end with a spring scale until it slips: force times length."), NumberOf::moment};
        if (what == "hold_axial") words = {tr("Force it holds along the tube"), tr("Pull it along the tube with a spring scale until it slides."), NumberOf::force};
    } else if (std::holds_alternative<EdgeGrip>(grip)) {
        if (what == "min") words = {tr("Thinnest plate it closes on"), tr("Close it as far as it goes and measure the gap between its jaws."), NumberOf::length};
        if (what == "max") words = {tr("Thickest plate it closes on"), tr("Open it as far as it holds and measure the gap between its jaws."), NumberOf::length};
    } else if (std::holds_alternative<ClothGrip>(grip)) {
        if (what == "max") words = {tr("Thickest cloth it takes"), tr("Fold cloth until the clip just closes and measure the fold with a caliper."), NumberOf::length};
        if (what == "drift") words = {tr("How far it drifts on the cloth"), tr("Put it on ten times, measure how far from its place it ends up, and take the typical distance."), NumberOf::length};
    }
    if (what == "hold_moment") words = {tr("Moment it holds"), tr("Pull the end of an arm of known length with a spring scale until it lets go: force times length."), NumberOf::moment};
    if (what == "hold_force") words = {tr("Force it holds"), tr("Pull it with a spring scale until it lets go."), NumberOf::force};
    if (part.grips.size() > 1 && !words.name.isEmpty()) words.name = tr("Grip %1: %2").arg(i + 1).arg(words.name);
    return words;
}

const Element* elementNamed(const Part& part, const QString& name) {
    for (const Element& e : part.elements) if (e.freedoms() > 0 && QString::fromStdString(e.name) == name) return &e;
    return nullptr;
}

FigureWords jointWords(const Part& part, const QString& joint, const QString& what) {
    const Element* element = elementNamed(part, joint);
    const bool slides = element && std::holds_alternative<SlideElement>(element->what);
    const bool bends = element && std::holds_alternative<BendElement>(element->what);
    QString called = joint;
    called.replace('_', ' ');
    if (!called.isEmpty()) called[0] = called[0].toUpper();
    FigureWords words;
    if (what == "hold") {
        words = slides ? FigureWords{tr("force it holds when locked"), tr("Lock it and pull along it with a spring scale until it slides."), NumberOf::force}
                       : FigureWords{tr("moment it holds when locked"), tr("Lock it and pull at a known distance with a spring scale until it gives way: force times distance."), NumberOf::moment};
        if (bends) words.measure = tr("Hold it level by its lower end and hang masses on the other until it sinks: weight times length.");
    } else if (what == "stiffness") {
        words = slides ? FigureWords{tr("stiffness (N/m)"), tr("Lock it, pull along it with a known force and measure how far it springs: force divided by distance."), NumberOf::ratio}
                       : FigureWords{tr("stiffness (N m/rad)"), tr("Lock it, load it with a known moment and measure the angle it springs: moment divided by angle in radians."), NumberOf::ratio};
    } else if (what == "setting_error") {
        words = {tr("how well it is set again by its marks"), tr("Set it ten times by its marks, measure each time, and take the typical difference from the middle."),
                 slides ? NumberOf::length : bends ? NumberOf::perMetre : NumberOf::angle};
    } else {
        return {};
    }
    words.name = called + ": " + words.name;
    return words;
}

FigureWords elementWords(const Part& part, const QString& index, const QString& what) {
    FigureWords words;
    if (what == "mass") words = {tr("Mass"), tr("Weigh it on a kitchen scale."), NumberOf::mass};
    if (what == "EI") words = {tr("Bending stiffness EI (N m²)"), tr("Clamp one end, hang a known mass on the other and measure how far it sinks: weight × length³ ÷ (3 × sag)."), NumberOf::ratio};
    if (what == "GJ") words = {tr("Twisting stiffness GJ (N m²)"), tr("Clamp one end, twist the other with a known moment and measure the angle: moment × length ÷ angle in radians."), NumberOf::ratio};
    if (words.name.isEmpty() || part.elements.size() < 2) return words;
    // Pieces have no names of their own: they are counted from the support toward the switch.
    words.name[0] = words.name[0].toLower();
    words.name = tr("Piece %1: %2").arg(index.toInt() + 1).arg(words.name);
    return words;
}

FigureWords portWords(const Port& port, const QString& which) {
    if (port.gender == Gender::male) return {tr("%1: how far the screw stands out").arg(which), tr("Measure the screw from the face it stands on to its tip with a caliper."), NumberOf::length};
    return {tr("%1: how deep the thread is").arg(which), tr("Push a thin rod into the thread until it stops and measure how far it went in."), NumberOf::length};
}

FigureWords faceWords(const QString& what) {
    if (what == "travel") return {tr("Travel until it answers"), tr("Press it slowly and measure how far the face has gone when it answers."), NumberOf::length};
    if (what == "force") return {tr("Force that sets it off"), tr("Stand it on a kitchen scale, press until it answers and read the scale (100 g is about 1 N)."), NumberOf::force};
    if (what == "angle_tolerance") return {tr("How far askew it still answers"), tr("Press it more and more askew until it does not answer and measure the angle."), NumberOf::angle};
    if (what == "sensing_range") return {tr("How far off it senses"), tr("Bring a hand nearer until it answers and measure the distance."), NumberOf::length};
    return {};
}

}  // namespace

FigureWords figureWords(const Part& part, const std::string& place) {
    const QStringList at = QString::fromStdString(place).split('/');
    FigureWords words;
    if (place == "rated_load") words = {tr("Mass that it may carry"), tr("Find it on the part's data sheet, or hang a known mass on its end for a day."), NumberOf::mass};
    else if (at[0] == "grips" && at.size() == 3) words = gripWords(part, at[1], at[2]);
    else if (at[0] == "joints" && at.size() == 3) words = jointWords(part, at[1], at[2]);
    else if (at[0] == "elements" && at.size() == 3) words = elementWords(part, at[1], at[2]);
    else if (at[0] == "face" && at.size() == 2) words = faceWords(at[1]);
    else if (at[0] == "outlet" && part.outlet) words = portWords(*part.outlet, tr("End toward the switch"));
    else if (at[0] == "bases" && at.size() == 3 && at[1].toUInt() < part.bases.size())
        words = portWords(part.bases[at[1].toUInt()], part.bases.size() > 1 ? tr("End toward the support, port %1").arg(at[1].toInt() + 1) : tr("End toward the support"));
    if (words.name.isEmpty()) words.name = QString::fromStdString(place);
    return words;
}

}  // namespace hither
