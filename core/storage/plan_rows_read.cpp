#include <cmath>

#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/storage/plan_rows.h"
#include "core/storage/plan_rules.h"
#include "core/storage/plan_units.h"

namespace hither {
namespace {

class PlanRows {
public:
    PlanRows(Database& database, std::vector<StorageError>& problems) : database_(database), problems_(problems) {}

    std::optional<Plan> read() {
        std::size_t plans = 0;
        rows("plan", "row", 1, [&](RowReader& r, std::size_t) {
            ++plans;
            plan_.id = r.text("id");
            plan_.title = r.text("title");
            plan_.shows = r.text("shows");
            plan_.notes = r.text("notes");
            plan_.revision = r.whole("revision");
            plan_.made_utc = r.text("made_utc");
            plan_.changed_utc = r.text("changed_utc");
            plan_.display = r.choice<UnitSystem>("display", unitSystemFromWord, UnitSystem::metric);
            plan_.currency = r.text("currency");
            plan_.limits = {r.real("clearance_body_m"), r.real("clearance_support_m"), r.real("clearance_mount_m"), r.real("press_factor"), r.real("knock_N"), r.real("thread_turns"), r.real("thread_factor")};
        });
        if (plans != 1 && problems_.empty()) problems_.push_back({StorageError::Code::damaged, {}, "table plan", {{"found", "no row"}, {"allowed", "one row"}}});
        supports();
        person();
        rows("site", "position", planBounds::sites, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            SiteSpec s;
            s.id = r.text("id");
            s.name = r.text("name");
            s.controlSite = r.text("control_site");
            s.given = r.choice<SiteGiven>("given", siteGivenFromWord, SiteGiven::typed);
            s.point = r.vector("point", "m");
            s.direction = r.vector("direction", "");
            s.directionTyped = r.flag("direction_typed");
            s.segment = r.choice<SegmentId>("segment", segmentFromWord, SegmentId{});
            s.movement_m = r.figure("movement", "m");
            s.tolerance_m = r.real("tolerance_m");
            s.angleTolerance_rad = r.real("angle_tolerance_rad");
            s.force_N = r.figure("force", "N");
            s.spread_m = r.figure("spread", "m");
            s.goesWithSupport = r.text("goes_with_support");
            s.goesWithGroup = r.text("goes_with_group");
            plan_.sites.push_back(std::move(s));
        });
        parts();
        options();
        rows("extra_item", "position", planBounds::extraItems, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            ExtraItem e;
            e.id = r.text("id");
            e.name = r.text("name");
            e.count = r.whole("count");
            e.price = money(r);
            e.notes = r.text("notes");
            plan_.extraItems.push_back(std::move(e));
        });
        rows("accepted_finding", "position", planBounds::accepted, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            plan_.accepted.push_back({r.text("option_id"), r.text("finding"), r.text("note"), r.text("who"), r.text("when_utc")});
        });
        rows("history", "position", planBounds::history, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            plan_.history.push_back({r.whole("revision"), r.text("when_utc"), r.text("who"), r.text("what")});
        });
        if (!problems_.empty()) return std::nullopt;
        return std::move(plan_);
    }

private:
    void rows(const char* table, const char* order, std::size_t most, const std::function<void(RowReader&, std::size_t)>& each) {
        if (problems_.empty()) eachRow(database_, table, order, most, problems_, each);
    }

    std::optional<Money> money(RowReader& r) {
        const auto minor = r.maybeInteger("price_minor");
        const auto currency = r.maybeText("price_currency");
        if (minor.has_value() != currency.has_value()) r.problem("price_minor", "an amount without a currency, or the reverse", "both or neither");
        if (!minor || !currency) return std::nullopt;
        return Money{*minor, *currency};
    }

    void supports() {
        const auto count = [&] { return plan_.supports.size(); };
        rows("support", "position", planBounds::supports, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            SupportSpec s;
            s.id = r.text("id");
            s.kind = r.text("kind");
            s.name = r.text("name");
            s.at_m = r.vector("at", "m");
            s.yaw_rad = r.real("yaw_rad");
            s.carriedBy = r.text("carried_by");
            s.carriedByGroup = r.text("carried_by_group");
            plan_.supports.push_back(std::move(s));
        });
        /// Rows that belong to one support each.
        const auto owned = [&](const char* table, const char* order, std::size_t most, const std::function<void(RowReader&, SupportSpec&)>& each) {
            rows(table, order, most * planBounds::supports, [&](RowReader& r, std::size_t) {
                const std::size_t owner = r.owner("support", count());
                if (owner < count()) each(r, plan_.supports[owner]);
            });
        };
        owned("support_dimension", "support, key", 200, [&](RowReader& r, SupportSpec& s) { s.dimensions[r.text("key")] = r.real("value_si"); });
        owned("support_tube", "support, rail", 200, [&](RowReader& r, SupportSpec& s) { s.tubes[r.text("rail")] = r.text("size"); });
        owned("support_setting", "support, group_id", 200, [&](RowReader& r, SupportSpec& s) { s.settings[r.text("group_id")] = r.real("value_si"); });
        owned("moving_group", "support, position", planBounds::groups, [&](RowReader& r, SupportSpec& s) {
            r.position("position", s.groups.size());
            MovingGroup g;
            g.id = r.text("id");
            g.name = r.text("name");
            g.parent = r.text("parent");
            g.pivot = r.vector("pivot", "m");
            g.axis = r.vector("axis", "");
            g.slides = r.flag("slides");
            g.min = r.real("min_si");
            g.max = r.real("max_si");
            g.value = r.real("value_si");
            s.groups.push_back(std::move(g));
        });
        owned("attachment", "support, position", planBounds::attachments, [&](RowReader& r, SupportSpec& s) {
            r.position("position", s.attachments.size());
            Attachment a;
            a.id = r.text("id");
            a.name = r.text("name");
            a.kind = r.choice<AttachmentKind>("kind", attachmentKindFromWord, AttachmentKind::rail);
            a.group = r.text("group_id");
            a.a = r.vector("from", "m");
            a.b = r.vector("to", "m");
            a.reference = r.vector("reference", "");
            a.up = r.vector("up", "");
            a.section = r.choice<Section>("section", sectionFromWord, Section::round);
            a.tubeAsTyped = r.text("size");
            a.outside_m = r.figure("outside", "m");
            a.thickness_m = r.figure("thickness", "m");
            a.depth_m = r.real("depth_m");
            a.sizeX_m = r.real("size_x_m");
            a.sizeY_m = r.real("size_y_m");
            s.attachments.push_back(std::move(a));
        });
        owned("attachment_blocked", "support, attachment, position", planBounds::attachments * planBounds::blocked, [&](RowReader& r, SupportSpec& s) {
            const std::size_t at = r.owner("attachment", s.attachments.size());
            if (at == s.attachments.size()) return;
            r.position("position", s.attachments[at].blocked.size());
            s.attachments[at].blocked.push_back({r.real("from_m"), r.real("to_m"), r.real("around_from_rad"), r.real("around_to_rad"), r.flag("whole_turn"), r.text("why")});
        });
        owned("attachment_touches", "support, attachment, position", planBounds::attachments * planBounds::blocked, [&](RowReader& r, SupportSpec& s) {
            const std::size_t at = r.owner("attachment", s.attachments.size());
            if (at == s.attachments.size()) return;
            r.position("position", s.attachments[at].solids.size());
            s.attachments[at].solids.push_back(r.text("solid"));
        });
        owned("landmark", "support, position", planBounds::landmarks, [&](RowReader& r, SupportSpec& s) {
            r.position("position", s.landmarks.size());
            Landmark l;
            l.id = r.text("id");
            l.name = r.text("name");
            l.group = r.text("group_id");
            l.p_S = r.vector("at", "m");
            s.landmarks.push_back(std::move(l));
        });
        owned("support_solid", "support, position", planBounds::solids, [&](RowReader& r, SupportSpec& s) {
            r.position("position", s.solids.size());
            SupportSolid b;
            b.name = r.text("name");
            b.group = r.text("group_id");
            b.solid = r.solid();
            s.solids.push_back(std::move(b));
        });
    }

    void person() {
        rows("person", "row", 1, [&](RowReader& r, std::size_t) {
            PersonSpec p;
            p.name = r.text("name");
            p.body.table = r.choice<BodyTable>("body_table", bodyTableFromWord, BodyTable::woman);
            p.body.percentile = r.maybeReal("percentile");
            p.on = r.text("support");
            p.lying = r.choice<PersonSpec::Lying>("lying", lyingFromWord, PersonSpec::Lying::onBack);
            p.cushion_m = r.real("cushion_m");
            plan_.person = std::move(p);
        });
        const auto owned = [&](const char* table, const char* order, const std::function<void(RowReader&, PersonSpec&)>& each) {
            rows(table, order, 1000, [&](RowReader& r, std::size_t) {
                if (plan_.person) each(r, *plan_.person);
                else r.problem("row", "a row about nobody", "no row: the plan has no person");
            });
        };
        owned("person_dimension", "name", [&](RowReader& r, PersonSpec& p) { p.body.typed[r.text("name")] = r.real("value_si"); });
        owned("person_posture", "joint", [&](RowReader& r, PersonSpec& p) { p.posture[r.text("joint")] = r.real("angle_rad"); });
        owned("person_range", "joint", [&](RowReader& r, PersonSpec& p) { p.activeRanges[r.text("joint")] = {r.real("min_rad"), r.real("max_rad"), r.text("source")}; });
    }

    void parts() {
        rows("part", "position", planBounds::parts, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            const nlohmann::json json = nlohmann::json::parse(r.text("definition_json"), nullptr, false);
            PartRead read = json.is_discarded() ? PartRead{} : readPart(json, {});
            if (!read.part) {
                r.problem("definition_json", read.problems.empty() ? "no JSON" : read.problems.front().key + ": " + read.problems.front().found, read.problems.empty() ? "a part" : read.problems.front().allowed);
                return;
            }
            // The readable columns repeat what the definition says.
            const Part& part = *read.part;
            if (r.text("id") != part.id) r.problem("id", "another id than in the definition", part.id);
            if (r.text("name") != part.name) r.problem("name", "another name than in the definition", part.name);
            if (r.text("kind") != word(part.kind)) r.problem("kind", "another kind than in the definition", word(part.kind));
            const std::optional<double> mass = r.maybeReal("mass_kg"), sum = part.totalMass_kg().value;
            if (mass.has_value() != sum.has_value() || (mass && std::abs(*mass - *sum) > 1e-9)) r.problem("mass_kg", "another mass than in the definition", "the same");
            if (money(r) != part.price) r.problem("price_minor", "another price than in the definition", "the same");
            plan_.parts.push_back(std::make_shared<const Part>(std::move(*read.part)));
        });
    }

    Mount* mountOf(RowReader& r) {
        const std::size_t option = r.owner("option", plan_.options.size());
        if (option == plan_.options.size()) return nullptr;
        std::vector<Mount>& mounts = plan_.options[option].mounts;
        const std::size_t mount = r.owner("mount", mounts.size());
        return mount == mounts.size() ? nullptr : &mounts[mount];
    }
    MountPart* partOf(RowReader& r) {
        Mount* mount = mountOf(r);
        if (mount == nullptr) return nullptr;
        const std::size_t part = r.owner("part", mount->parts.size());
        return part == mount->parts.size() ? nullptr : &mount->parts[part];
    }

    void options() {
        rows("placement_option", "position", planBounds::options, [&](RowReader& r, std::size_t i) {
            r.position("position", i);
            PlanOption o;
            o.id = r.text("id");
            o.name = r.text("name");
            o.notes = r.text("notes");
            plan_.options.push_back(std::move(o));
        });
        constexpr std::size_t mounts = planBounds::options * planBounds::mountsInOption;
        rows("mount", "option, position", mounts, [&](RowReader& r, std::size_t) {
            const std::size_t option = r.owner("option", plan_.options.size());
            if (option == plan_.options.size()) return;
            std::vector<Mount>& list = plan_.options[option].mounts;
            r.position("position", list.size());
            Mount m;
            m.id = r.text("id");
            m.name = r.text("name");
            m.site = r.text("site");
            m.support = r.text("support");
            m.attachment = r.text("attachment");
            m.place = {r.real("along_m"), r.real("around_rad"), r.flag("from_below"), r.real("x_m"), r.real("y_m"), r.real("yaw_rad")};
            m.placeKept = r.flag("place_kept");
            list.push_back(std::move(m));
        });
        rows("mount_part", "option, mount, position", mounts * mostPartsInMount, [&](RowReader& r, std::size_t) {
            Mount* mount = mountOf(r);
            if (mount == nullptr) return;
            r.position("position", mount->parts.size());
            if (mount->parts.size() >= mostPartsInMount) {
                r.problem("position", "more than " + std::to_string(mostPartsInMount) + " parts in one mount", "at most as many");
                return;
            }
            MountPart p;
            p.part = r.text("part");
            p.reversed = r.flag("reversed");
            p.clocking_rad = r.real("clocking_rad");
            p.clockingKept = r.flag("clocking_kept");
            mount->parts.push_back(std::move(p));
        });
        rows("joint_setting", "option, mount, part, joint", 1'000'000, [&](RowReader& r, std::size_t) {
            if (MountPart* part = partOf(r)) part->joints[r.text("joint")].kept = r.flag("kept");
        });
        rows("joint_value", "option, mount, part, joint, component", 6'000'000, [&](RowReader& r, std::size_t) {
            MountPart* part = partOf(r);
            if (part == nullptr) return;
            const auto joint = part->joints.find(r.text("joint"));
            if (joint == part->joints.end()) {
                r.problem("joint", "a value of a joint without a setting", "a joint of table joint_setting");
                return;
            }
            r.position("component", joint->second.q.size());
            if (joint->second.q.size() < 16) joint->second.q.push_back(r.real("value_si"));
        });
        rows("keep_out", "option, position", planBounds::options * planBounds::keepOutsInOption, [&](RowReader& r, std::size_t) {
            const std::size_t option = r.owner("option", plan_.options.size());
            if (option == plan_.options.size()) return;
            std::vector<KeepOut>& list = plan_.options[option].keepOuts;
            r.position("position", list.size());
            KeepOut k;
            k.id = r.text("id");
            k.name = r.text("name");
            k.margin_m = r.real("margin_m");
            k.support = r.text("goes_with_support");
            k.group = r.text("goes_with_group");
            k.solid = r.solid();
            list.push_back(std::move(k));
        });
    }

    Database& database_;
    std::vector<StorageError>& problems_;
    Plan plan_;
};

}  // namespace

std::optional<Plan> readRows(Database& database, std::vector<StorageError>& problems) { return PlanRows(database, problems).read(); }

}  // namespace hither
