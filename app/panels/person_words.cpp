#include "app/panels/person_words.h"

#include <algorithm>
#include <iterator>
#include <map>

#include <QCoreApplication>

#include "app/panels/givens_panel.h"

namespace hither {
namespace {

struct Words {
    Q_DECLARE_TR_FUNCTIONS(hither::PersonWords)
};

const std::map<std::string, const char*>& dimensionNames() {
    static const std::map<std::string, const char*> names{
        {"stature", QT_TRANSLATE_NOOP("hither::PersonWords", "Stature")},
        {"weightkg", QT_TRANSLATE_NOOP("hither::PersonWords", "Body mass")},
        {"sittingheight", QT_TRANSLATE_NOOP("hither::PersonWords", "Sitting height")},
        {"eyeheightsitting", QT_TRANSLATE_NOOP("hither::PersonWords", "Eye height, sitting")},
        {"acromialheightsitting", QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder height, sitting")},
        {"elbowrestheight", QT_TRANSLATE_NOOP("hither::PersonWords", "Elbow height, sitting")},
        {"acromionradialelength", QT_TRANSLATE_NOOP("hither::PersonWords", "Upper arm length (acromion to radiale)")},
        {"shoulderelbowlength", QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder-elbow length")},
        {"radialestylionlength", QT_TRANSLATE_NOOP("hither::PersonWords", "Forearm length (radiale to stylion)")},
        {"handlength", QT_TRANSLATE_NOOP("hither::PersonWords", "Hand length")},
        {"handbreadth", QT_TRANSLATE_NOOP("hither::PersonWords", "Hand breadth at the knuckles")},
        {"biacromialbreadth", QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder breadth (biacromial)")},
        {"bideltoidbreadth", QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder breadth (bideltoid)")},
        {"hipbreadthsitting", QT_TRANSLATE_NOOP("hither::PersonWords", "Hip breadth, sitting")},
        {"buttockkneelength", QT_TRANSLATE_NOOP("hither::PersonWords", "Buttock-knee length")},
        {"buttockpopliteallength", QT_TRANSLATE_NOOP("hither::PersonWords", "Buttock-popliteal length")},
        {"poplitealheight", QT_TRANSLATE_NOOP("hither::PersonWords", "Lower leg length (popliteal height)")},
        {"kneeheightsitting", QT_TRANSLATE_NOOP("hither::PersonWords", "Knee height, sitting")},
        {"thighclearance", QT_TRANSLATE_NOOP("hither::PersonWords", "Thigh clearance")},
        {"abdominalextensiondepthsitting", QT_TRANSLATE_NOOP("hither::PersonWords", "Abdominal depth, sitting")},
        {"chestdepth", QT_TRANSLATE_NOOP("hither::PersonWords", "Chest depth")},
        {"chestbreadth", QT_TRANSLATE_NOOP("hither::PersonWords", "Chest breadth")},
        {"footlength", QT_TRANSLATE_NOOP("hither::PersonWords", "Foot length")},
        {"footbreadthhorizontal", QT_TRANSLATE_NOOP("hither::PersonWords", "Foot breadth")},
        {"lateralmalleolusheight", QT_TRANSLATE_NOOP("hither::PersonWords", "Outer ankle height")},
        {"headbreadth", QT_TRANSLATE_NOOP("hither::PersonWords", "Head breadth")},
        {"headlength", QT_TRANSLATE_NOOP("hither::PersonWords", "Head length")},
        {"tragiontopofhead", QT_TRANSLATE_NOOP("hither::PersonWords", "Tragion to top of head")},
        {"neckcircumference", QT_TRANSLATE_NOOP("hither::PersonWords", "Neck circumference")},
        {"wristcircumference", QT_TRANSLATE_NOOP("hither::PersonWords", "Wrist circumference")},
        {"forearmcircumferenceflexed", QT_TRANSLATE_NOOP("hither::PersonWords", "Forearm circumference, flexed")},
        {"bicepscircumferenceflexed", QT_TRANSLATE_NOOP("hither::PersonWords", "Upper arm circumference, flexed")},
        {"thumbtipreach", QT_TRANSLATE_NOOP("hither::PersonWords", "Thumb-tip reach")},
    };
    return names;
}

struct JointWords { const char* name; const char* meaning; };
const std::map<std::string, JointWords>& joints() {
    static const std::map<std::string, JointWords> words{
        {"neck_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Neck flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: forward.")}},
        {"neck_bend", {QT_TRANSLATE_NOOP("hither::PersonWords", "Neck side bend"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: to the right.")}},
        {"neck_rotation", {QT_TRANSLATE_NOOP("hither::PersonWords", "Neck rotation"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: to the left.")}},
        {"shoulder_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: arm forward.")}},
        {"shoulder_abduction", {QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder abduction"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: arm away from the body.")}},
        {"shoulder_rotation", {QT_TRANSLATE_NOOP("hither::PersonWords", "Shoulder rotation"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: outward.")}},
        {"elbow_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Elbow flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "0°: arm straight.")}},
        {"forearm_pronation", {QT_TRANSLATE_NOOP("hither::PersonWords", "Forearm pronation"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: palm down; negative: supination.")}},
        {"wrist_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Wrist flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: toward the palm.")}},
        {"wrist_deviation", {QT_TRANSLATE_NOOP("hither::PersonWords", "Wrist deviation"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: toward the thumb; negative: toward the little finger.")}},
        {"hip_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Hip flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: thigh forward.")}},
        {"hip_abduction", {QT_TRANSLATE_NOOP("hither::PersonWords", "Hip abduction"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: leg outward.")}},
        {"hip_rotation", {QT_TRANSLATE_NOOP("hither::PersonWords", "Hip rotation"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: outward.")}},
        {"knee_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Knee flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "0°: leg straight.")}},
        {"ankle_flexion", {QT_TRANSLATE_NOOP("hither::PersonWords", "Ankle flexion"), QT_TRANSLATE_NOOP("hither::PersonWords", "Positive: foot upward.")}},
    };
    return words;
}

bool endsIn(const std::string& text, const std::string& end) { return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0; }
std::string withoutSide(const std::string& joint) {
    for (const char* side : {"_left", "_right"})
        if (endsIn(joint, side)) return joint.substr(0, joint.size() - std::string(side).size());
    return joint;
}
bool isJoint(const std::string& name) { return publishedRanges().count(name) > 0; }

}  // namespace

QString bodyDimensionName(const std::string& dimension) {
    const auto found = dimensionNames().find(dimension);
    return found == dimensionNames().end() ? QString::fromStdString(dimension) : Words::tr(found->second);
}

std::vector<BodyRegion> bodyRegions() {
    return {
        {Words::tr("Trunk and shoulders"), {"sittingheight", "acromialheightsitting", "biacromialbreadth", "bideltoidbreadth", "chestbreadth", "chestdepth", "abdominalextensiondepthsitting", "hipbreadthsitting"}},
        {Words::tr("Arms and hands"), {"elbowrestheight", "shoulderelbowlength", "acromionradialelength", "radialestylionlength", "handlength", "handbreadth", "bicepscircumferenceflexed", "forearmcircumferenceflexed", "wristcircumference"}},
        {Words::tr("Legs and feet"), {"buttockkneelength", "thighclearance", "kneeheightsitting", "poplitealheight", "lateralmalleolusheight", "footlength", "footbreadthhorizontal"}},
        {Words::tr("Head and neck"), {"eyeheightsitting", "headbreadth", "headlength", "tragiontopofhead", "neckcircumference"}},
    };
}

std::vector<Limb> limbs() {
    const auto sided = [](std::initializer_list<const char*> names, const char* side) {
        std::vector<std::string> all;
        for (const char* name : names) all.push_back(std::string(name) + side);
        return all;
    };
    const std::initializer_list<const char*> arm{"shoulder_flexion", "shoulder_abduction", "shoulder_rotation", "elbow_flexion", "forearm_pronation", "wrist_flexion", "wrist_deviation"};
    const std::initializer_list<const char*> leg{"hip_flexion", "hip_abduction", "hip_rotation", "knee_flexion", "ankle_flexion"};
    return {
        {Words::tr("Neck"), {"neck_flexion", "neck_bend", "neck_rotation"}},
        {Words::tr("Left arm"), sided(arm, "_left")},
        {Words::tr("Right arm"), sided(arm, "_right")},
        {Words::tr("Left leg"), sided(leg, "_left")},
        {Words::tr("Right leg"), sided(leg, "_right")},
    };
}

QString jointName(const std::string& joint, bool withSide) {
    const auto found = joints().find(withoutSide(joint));
    const QString name = found == joints().end() ? QString::fromStdString(joint) : Words::tr(found->second.name);
    if (withSide && endsIn(joint, "_left")) return Words::tr("%1, left").arg(name);
    if (withSide && endsIn(joint, "_right")) return Words::tr("%1, right").arg(name);
    return name;
}

QString jointMeaning(const std::string& joint) {
    const auto found = joints().find(withoutSide(joint));
    return found == joints().end() ? QString() : Words::tr(found->second.meaning);
}

QString tableName(BodyTable table) {
    switch (table) {
        case BodyTable::woman: return Words::tr("Woman");
        case BodyTable::man: return Words::tr("Man");
        case BodyTable::child: break;
    }
    return Words::tr("Child");
}

QString lyingName(PersonSpec::Lying lying) {
    switch (lying) {
        case PersonSpec::Lying::onBack: return Words::tr("On the back");
        case PersonSpec::Lying::onLeft: return Words::tr("On the left side");
        case PersonSpec::Lying::onRight: break;
    }
    return Words::tr("On the right side");
}

std::string problemKey(const std::string& problem) {
    for (std::size_t from = problem.find('"'); from != std::string::npos;) {
        const std::size_t to = problem.find('"', from + 1);
        if (to == std::string::npos) break;
        const std::string name = problem.substr(from + 1, to - from - 1);
        if (dimensionNames().count(name) || isJoint(name)) return name;
        from = problem.find('"', to + 1);
    }
    for (const char* word : {"cushion", "percentile"})
        if (problem.find(std::string("the ") + word) == 0) return word;
    return {};
}

QString problemWords(const std::string& problem) {
    QString words = fromCore(problem);
    const auto lower = [](QString name) { name[0] = name[0].toLower(); return name; };
    for (const auto& [key, name] : dimensionNames()) words.replace('"' + QString::fromStdString(key) + '"', lower(Words::tr(name)));
    for (const auto& [joint, range] : publishedRanges()) words.replace('"' + QString::fromStdString(joint) + '"', lower(jointName(joint, true)));
    if (words.isEmpty()) return words;
    words[0] = words[0].toUpper();
    return words + '.';
}

}  // namespace hither
