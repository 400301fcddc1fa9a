#include <algorithm>

#include <catch2/catch.hpp>

#include "core/remedy/remedy.h"
#include "core/storage/plan_json.h"

using namespace hither;

namespace {

const std::string source = HITHER_SOURCE_DIR;

struct Data {
    Catalogue catalogue;
    MaterialTable materials;
    BodyData body;
    Data() {
        REQUIRE(catalogue.addFolder(source + "/resources/parts").empty());
        std::vector<std::string> problems;
        materials = readMaterials(source + "/resources/materials/materials.json", problems);
        body = *BodyData::read(source + "/resources/body", problems);
        REQUIRE(problems.empty());
    }
    CheckContext context(const Plan& plan) const {
        CheckContext c;
        c.limits = plan.limits;
        c.catalogue = &catalogue;
        c.materials = &materials;
        return c;
    }
    std::vector<Finding> check(const Plan& plan) const {
        const SetupMade made = makeSetup(plan, 0, body);
        REQUIRE(made.setup);
        return checkAll(*made.setup, context(plan));
    }
};
const Data& data() {
    static const Data d;
    return d;
}

Plan sample(const std::string& name) {
    PlanRead read = planFromJsonFile(source + "/sample_plans/" + name + ".json");
    REQUIRE(read.plan);
    return std::move(*read.plan);
}
const Finding* withRemedy(const std::vector<Finding>& findings, Remedy::Kind kind) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.remedy && f.remedy->kind == kind; });
    return found == findings.end() ? nullptr : &*found;
}
bool mates(const std::vector<Finding>& findings) {
    return std::none_of(findings.begin(), findings.end(), [](const Finding& f) { return f.key.rfind("fit.mate", 0) == 0 && f.verdict != Verdict::meets; });
}

}  // namespace

TEST_CASE("Putting in the adapter makes a 3/8 stud and a 1/4 stud go together and changes nothing else") {
    const Plan plan = sample("does_not_mate");
    const std::vector<Finding> before = data().check(plan);
    REQUIRE_FALSE(mates(before));
    const Finding* finding = withRemedy(before, Remedy::Kind::insertParts);
    REQUIRE(finding);
    const Edited mended = applyRemedy(plan, plan.options[0].id, *finding, data().body, data().context(plan));
    REQUIRE(mended);
    CHECK(mates(data().check(*mended.plan)));

    // Taken out again, what is left is the mount as it was.
    Mount rest = mended.plan->options[0].mounts[0];
    const auto first = rest.parts.begin() + finding->remedy->part;
    for (std::size_t i = 0; i < finding->remedy->insert.size(); ++i) CHECK(mended.plan->part((first + static_cast<std::ptrdiff_t>(i))->part));
    rest.parts.erase(first, first + static_cast<std::ptrdiff_t>(finding->remedy->insert.size()));
    CHECK(rest == plan.options[0].mounts[0]);
}

TEST_CASE("Setting the joints brings a switch that stands off its site to it") {
    Plan plan = sample("elbow_switch_on_chair");
    Mount& mount = plan.options[0].mounts[0];
    for (MountPart& p : mount.parts)
        for (auto& [name, setting] : p.joints)
            for (double& q : setting.q) q *= 0.5;
    const std::vector<Finding> before = data().check(plan);
    const Finding* finding = withRemedy(before, Remedy::Kind::solve);
    REQUIRE(finding);
    const Edited mended = applyRemedy(plan, plan.options[0].id, *finding, data().body, data().context(plan));
    REQUIRE(mended);
    bool reached = false;
    for (const Finding& f : data().check(*mended.plan)) {
        if (f.key == "reach.site.there") reached = true;
        CHECK(f.key != "reach.site.short");
    }
    CHECK(reached);
}

TEST_CASE("A joint to move and a part to take instead are set as the remedy says") {
    const Plan plan = sample("elbow_switch_on_chair");
    const Mount& mount = plan.options[0].mounts[0];
    Finding finding;
    finding.remedy = Remedy{};
    Remedy& remedy = *finding.remedy;
    remedy.mount = mount.id;
    for (std::size_t at = 0; at < mount.parts.size() && remedy.part < 0; ++at)
        for (const Element& e : plan.part(mount.parts[at].part)->elements)
            if (e.freedoms() == 1) {
                remedy.part = static_cast<int>(at);
                remedy.insert.resize(1);
                remedy.insert[0].joints[e.name].q = {0.25};
                break;
            }
    REQUIRE(remedy.part >= 0);
    remedy.kind = Remedy::Kind::moveJoint;
    const auto apply = [&](const Plan& p) { return applyRemedy(p, p.options[0].id, finding, data().body, data().context(p)); };
    const Edited moved = apply(plan);
    REQUIRE(moved);
    const auto& [joint, setting] = *remedy.insert[0].joints.begin();
    CHECK(moved.plan->options[0].mounts[0].parts[static_cast<std::size_t>(remedy.part)].joints.at(joint).q == setting.q);

    Part other = *plan.part(mount.parts.back().part);
    other.id = "another-switch";
    remedy.kind = Remedy::Kind::replacePart;
    remedy.part = static_cast<int>(mount.parts.size()) - 1;
    remedy.partData = {other};
    const Edited replaced = apply(plan);
    REQUIRE(replaced);
    CHECK(replaced.plan->options[0].mounts[0].parts.back().part == "another-switch");
}

TEST_CASE("A remedy that cannot be applied is refused with a reason and changes nothing") {
    const Plan plan = sample("does_not_mate");
    const std::string option = plan.options[0].id;
    const std::vector<Finding> findings = data().check(plan);
    const auto refused = [&](const Finding& f, const std::string& in) {
        const Edited edited = applyRemedy(plan, in, f, data().body, data().context(plan));
        return !edited && !edited.whyNot.empty();
    };
    Finding none = findings.front();
    none.remedy.reset();
    CHECK(refused(none, option));
    const Finding* insert = withRemedy(findings, Remedy::Kind::insertParts);
    REQUIRE(insert);
    CHECK(refused(*insert, "no such option"));
    Finding gone = *insert;
    gone.remedy->mount = "no such mount";
    CHECK(refused(gone, option));
    gone.remedy->kind = Remedy::Kind::solve;
    CHECK(refused(gone, option));
    Finding person = *insert;
    for (const Remedy::Kind kind : {Remedy::Kind::measure, Remedy::Kind::chooseGroup}) {
        person.remedy->kind = kind;
        CHECK_FALSE(changesPlan(kind));
        CHECK(refused(person, option));
    }
}
