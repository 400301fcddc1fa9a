#include <nlohmann/json.hpp>

#include "core/catalogue/catalogue.h"
#include "core/storage/plan_rows.h"
#include "core/storage/plan_units.h"

namespace hither {
namespace {

void money(RowWriter& w, const std::optional<Money>& m) {
    if (m) w.integer("price_minor", m->minor).text("price_currency", m->currency);
    else w.null("price_minor").null("price_currency");
}

void writeAttachment(RowWriter& w, std::size_t support, std::size_t position, const Attachment& a) {
    w.into("attachment").index("support", support).index("position", position).text("id", a.id).text("name", a.name).text("kind", word(a.kind));
    w.text("group_id", a.group).vector("from", "m", a.a).vector("to", "m", a.b).vector("reference", "", a.reference).vector("up", "", a.up);
    w.text("section", word(a.section)).text("size", a.tubeAsTyped).figure("outside", "m", a.outside_m).figure("thickness", "m", a.thickness_m);
    w.real("depth_m", a.depth_m).real("size_x_m", a.sizeX_m).real("size_y_m", a.sizeY_m).done();
    for (std::size_t i = 0; i < a.blocked.size(); ++i) {
        const Blocked& b = a.blocked[i];
        w.into("attachment_blocked").index("support", support).index("attachment", position).index("position", i);
        w.real("from_m", b.from_m).real("to_m", b.to_m).real("around_from_rad", b.sectorFrom_rad).real("around_to_rad", b.sectorTo_rad);
        w.flag("whole_turn", b.wholeTurn).text("why", b.why).done();
    }
    for (std::size_t i = 0; i < a.solids.size(); ++i)
        w.into("attachment_touches").index("support", support).index("attachment", position).index("position", i).text("solid", a.solids[i]).done();
}

void writeSupport(RowWriter& w, std::size_t at, const SupportSpec& s) {
    w.into("support").index("position", at).text("id", s.id).text("kind", s.kind).text("name", s.name).vector("at", "m", s.at_m);
    w.real("yaw_rad", s.yaw_rad).text("carried_by", s.carriedBy).text("carried_by_group", s.carriedByGroup).done();
    const SupportKind* kind = supportKind(s.kind);
    for (const auto& [key, value] : s.dimensions) {
        bool angle = false;
        if (kind != nullptr) for (const SupportDimension& d : kind->dimensions) if (d.key == key) angle = d.angle;
        w.into("support_dimension").index("support", at).text("key", key).real("value_si", value).text("unit", angle ? "rad" : "m").done();
    }
    for (const auto& [rail, size] : s.tubes) w.into("support_tube").index("support", at).text("rail", rail).text("size", size).done();
    for (const auto& [group, value] : s.settings)
        w.into("support_setting").index("support", at).text("group_id", group).real("value_si", value).text("unit", groupSlides(s, group) ? "m" : "rad").done();
    for (std::size_t i = 0; i < s.groups.size(); ++i) {
        const MovingGroup& g = s.groups[i];
        w.into("moving_group").index("support", at).index("position", i).text("id", g.id).text("name", g.name).text("parent", g.parent);
        w.vector("pivot", "m", g.pivot).vector("axis", "", g.axis).flag("slides", g.slides).real("min_si", g.min).real("max_si", g.max);
        w.real("value_si", g.value).text("unit", g.slides ? "m" : "rad").done();
    }
    for (std::size_t i = 0; i < s.attachments.size(); ++i) writeAttachment(w, at, i, s.attachments[i]);
    for (std::size_t i = 0; i < s.landmarks.size(); ++i) {
        const Landmark& l = s.landmarks[i];
        w.into("landmark").index("support", at).index("position", i).text("id", l.id).text("name", l.name).text("group_id", l.group).vector("at", "m", l.p_S).done();
    }
    for (std::size_t i = 0; i < s.solids.size(); ++i)
        w.into("support_solid").index("support", at).index("position", i).text("name", s.solids[i].name).text("group_id", s.solids[i].group).solid(s.solids[i].solid).done();
}

void writePerson(RowWriter& w, const PersonSpec& p) {
    w.into("person").integer("row", 1).text("name", p.name).text("body_table", word(p.body.table)).maybeReal("percentile", p.body.percentile);
    w.text("support", p.on).text("lying", word(p.lying)).real("cushion_m", p.cushion_m).done();
    for (const auto& [name, value] : p.body.typed)
        w.into("person_dimension").text("name", name).real("value_si", value).text("unit", name == "weightkg" ? "kg" : "m").done();
    for (const auto& [name, value] : p.posture) w.into("person_posture").text("joint", name).real("angle_rad", value).done();
    for (const auto& [name, r] : p.activeRanges)
        w.into("person_range").text("joint", name).real("min_rad", r.min).real("max_rad", r.max).text("source", r.source).done();
}

void writeSite(RowWriter& w, std::size_t at, const SiteSpec& s) {
    w.into("site").index("position", at).text("id", s.id).text("name", s.name).text("control_site", s.controlSite).text("given", word(s.given));
    w.vector("point", "m", s.point).vector("direction", "", s.direction).flag("direction_typed", s.directionTyped).text("segment", word(s.segment));
    w.figure("movement", "m", s.movement_m).real("tolerance_m", s.tolerance_m).real("angle_tolerance_rad", s.angleTolerance_rad);
    w.figure("force", "N", s.force_N).figure("spread", "m", s.spread_m).text("goes_with_support", s.goesWithSupport).text("goes_with_group", s.goesWithGroup).done();
}

const char* unitOf(const Part* part, const std::string& joint) {
    if (part != nullptr)
        for (const Element& e : part->elements) {
            if (e.name != joint || e.freedoms() == 0) continue;
            const JointForm form = jointForm(e);
            return form == JointForm::slide ? "m" : form == JointForm::curvature ? "1/m" : "rad";
        }
    return "rad";
}

void writeMount(RowWriter& w, std::size_t option, std::size_t at, const Mount& m, const Plan& plan) {
    w.into("mount").index("option", option).index("position", at).text("id", m.id).text("name", m.name).text("site", m.site).text("support", m.support);
    w.text("attachment", m.attachment).real("along_m", m.place.along_m).real("around_rad", m.place.around_rad).flag("from_below", m.place.fromBelow);
    w.real("x_m", m.place.x_m).real("y_m", m.place.y_m).real("yaw_rad", m.place.yaw_rad).flag("place_kept", m.placeKept).done();
    for (std::size_t i = 0; i < m.parts.size(); ++i) {
        const MountPart& p = m.parts[i];
        w.into("mount_part").index("option", option).index("mount", at).index("position", i).text("part", p.part).flag("reversed", p.reversed);
        w.real("clocking_rad", p.clocking_rad).flag("clocking_kept", p.clockingKept).done();
        for (const auto& [name, setting] : p.joints) {
            w.into("joint_setting").index("option", option).index("mount", at).index("part", i).text("joint", name).flag("kept", setting.kept).done();
            for (std::size_t c = 0; c < setting.q.size(); ++c) {
                w.into("joint_value").index("option", option).index("mount", at).index("part", i).text("joint", name).index("component", c);
                w.real("value_si", setting.q[c]).text("unit", unitOf(plan.part(p.part), name)).done();
            }
        }
    }
}

}  // namespace

bool writeRows(const Plan& plan, Database& database, std::string& words) {
    RowWriter w(database);
    const CheckLimits& l = plan.limits;
    w.into("plan").integer("row", 1).text("id", plan.id).text("title", plan.title).text("shows", plan.shows).text("notes", plan.notes);
    w.integer("revision", plan.revision).text("made_utc", plan.made_utc).text("changed_utc", plan.changed_utc).text("display", word(plan.display));
    w.text("currency", plan.currency).real("clearance_body_m", l.clearanceBody_m).real("clearance_support_m", l.clearanceSupport_m);
    w.real("clearance_mount_m", l.clearanceMount_m).real("press_factor", l.pressFactor).real("knock_N", l.knock_N);
    w.real("thread_turns", l.threadTurns).real("thread_factor", l.threadFactor).done();
    for (std::size_t i = 0; i < plan.supports.size(); ++i) writeSupport(w, i, plan.supports[i]);
    if (plan.person) writePerson(w, *plan.person);
    for (std::size_t i = 0; i < plan.sites.size(); ++i) writeSite(w, i, plan.sites[i]);
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        const Part& p = *plan.parts[i];
        w.into("part").index("position", i).text("id", p.id).text("name", p.name).text("kind", word(p.kind)).maybeReal("mass_kg", p.totalMass_kg().value);
        money(w, p.price);
        w.text("definition_json", writePart(p).dump()).done();
    }
    for (std::size_t i = 0; i < plan.options.size(); ++i) {
        const PlanOption& o = plan.options[i];
        w.into("placement_option").index("position", i).text("id", o.id).text("name", o.name).text("notes", o.notes).done();
        for (std::size_t k = 0; k < o.mounts.size(); ++k) writeMount(w, i, k, o.mounts[k], plan);
        for (std::size_t k = 0; k < o.keepOuts.size(); ++k) {
            const KeepOut& keep = o.keepOuts[k];
            w.into("keep_out").index("option", i).index("position", k).text("id", keep.id).text("name", keep.name).real("margin_m", keep.margin_m);
            w.text("goes_with_support", keep.support).text("goes_with_group", keep.group).solid(keep.solid).done();
        }
    }
    for (std::size_t i = 0; i < plan.extraItems.size(); ++i) {
        const ExtraItem& e = plan.extraItems[i];
        w.into("extra_item").index("position", i).text("id", e.id).text("name", e.name).integer("count", e.count);
        money(w, e.price);
        w.text("notes", e.notes).done();
    }
    for (std::size_t i = 0; i < plan.accepted.size(); ++i) {
        const AcceptedFinding& a = plan.accepted[i];
        w.into("accepted_finding").index("position", i).text("option_id", a.option).text("finding", a.finding).text("note", a.note).text("who", a.who).text("when_utc", a.when_utc).done();
    }
    for (std::size_t i = 0; i < plan.history.size(); ++i) {
        const HistoryEntry& h = plan.history[i];
        w.into("history").index("position", i).integer("revision", h.revision).text("when_utc", h.when_utc).text("who", h.who).text("what", h.what).done();
    }
    words = w.words();
    return !w.failed();
}

}  // namespace hither
