#include <algorithm>

#include <nlohmann/json.hpp>

#include "core/catalogue/solid_json.h"
#include "core/storage/exact_number.h"
#include "core/storage/json_value.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_units.h"

namespace hither {
namespace {

using V = JsonValue;

V number(double si, Scale scale) { return V::ofNumber(textFromSi(si, scale)); }
V whole(int value) { return V::ofNumber(std::to_string(value)); }

V vector(const Vec3& v, Scale scale) { return V::list({number(v.x(), scale), number(v.y(), scale), number(v.z(), scale)}); }

/// Adds only what is not empty: an absent key reads as empty.
void addText(V& object, const char* key, const std::string& text) {
    if (!text.empty()) object.add(key, V::ofText(text));
}
void addIf(V& object, const char* key, double si, Scale scale) {
    if (si != 0) object.add(key, number(si, scale));
}
void addFlag(V& object, const char* key, bool flag) {
    if (flag) object.add(key, V::ofFlag(true));
}

V basis(const Basis& b) {
    if (b.source.empty()) return V::ofText(word(b.kind));
    V out = V::object();
    out.add("kind", V::ofText(word(b.kind)));
    out.add("source", V::ofText(b.source));
    return out;
}

/// A figure in full; a plain number reads as assumed without a source.
V figure(const Figure& f, Scale scale) {
    const Basis plainBasis{f.value ? BasisKind::assumed : BasisKind::unknown, {}};
    if (f.basis == plainBasis) return f.value ? number(*f.value, scale) : V();
    V out = V::object();
    out.add("value", f.value ? number(*f.value, scale) : V());
    if (f.basis.kind != plainBasis.kind) out.add("basis", V::ofText(word(f.basis.kind)));
    addText(out, "source", f.basis.source);
    return out;
}
void addFigure(V& object, const char* key, const Figure& f, Scale scale) {
    if (!(f == Figure{})) object.add(key, figure(f, scale));
}

V money(const Money& m) {
    std::string amount = printMoney(m);
    const std::size_t space = amount.find(' ');
    if (space != std::string::npos) amount.erase(space);
    V out = V::object();
    out.add("amount", V::ofText(amount));
    out.add("currency", V::ofText(m.currency));
    return out;
}

V solid(const Solid& s) { return V::from(writeSolid(s)); }

V carrier(const std::string& support, const std::string& group) {
    V out = V::object();
    out.add("support", V::ofText(support));
    addText(out, "group", group);
    return out;
}

void addList(V& object, const char* key, std::vector<V> items) {
    if (!items.empty()) object.add(key, V::list(std::move(items)));
}

V movingGroup(const MovingGroup& g) {
    V out = V::object();
    const Scale scale = g.slides ? Scale::milli : Scale::degree;
    const std::string unit = g.slides ? "_mm" : "_deg";
    out.add("id", V::ofText(g.id));
    out.add("name", V::ofText(g.name));
    addText(out, "parent", g.parent);
    out.add("pivot_mm", vector(g.pivot, Scale::milli));
    out.add("axis", vector(g.axis, Scale::one));
    out.add("kind", V::ofText(g.slides ? "slide" : "turn"));
    out.add("min" + unit, number(g.min, scale));
    out.add("max" + unit, number(g.max, scale));
    out.add("value" + unit, number(g.value, scale));
    return out;
}

V attachment(const Attachment& a) {
    V out = V::object();
    out.add("id", V::ofText(a.id));
    out.add("name", V::ofText(a.name));
    addText(out, "group", a.group);
    if (a.kind == AttachmentKind::face) {
        out.add("middle_mm", vector(a.a, Scale::milli));
        out.add("x_axis", vector(a.reference, Scale::one));
        out.add("up", vector(a.up, Scale::one));
        out.add("size_mm", V::list({number(a.sizeX_m, Scale::milli), number(a.sizeY_m, Scale::milli)}));
    } else {
        out.add("from_mm", vector(a.a, Scale::milli));
        out.add("to_mm", vector(a.b, Scale::milli));
    }
    if (a.kind == AttachmentKind::rail) {
        addText(out, "size", a.tubeAsTyped);
        out.add("section", V::ofText(word(a.section)));
        out.add("reference", vector(a.reference, Scale::one));
        // The size and its basis say it all, unless the figure is another one.
        const auto tube = a.tubeAsTyped.empty() ? Parsed<TubeSize>::refused({}) : parseTube(a.tubeAsTyped);
        const bool fromSize = tube && a.outside_m.value == tube.value->outside_m;
        if (fromSize && !(a.outside_m.basis == Basis{})) out.add("basis", basis(a.outside_m.basis));
        if (!fromSize && (tube || !(a.outside_m == Figure{}))) out.add("outside_mm", figure(a.outside_m, Scale::milli));
    } else if (a.kind != AttachmentKind::face) {
        out.add("up", vector(a.up, Scale::one));
        addFigure(out, "thickness_mm", a.thickness_m, Scale::milli);
    }
    if (a.kind == AttachmentKind::edge) out.add("depth_mm", number(a.depth_m, Scale::milli));
    if (a.kind != AttachmentKind::face) {
        std::vector<V> blocked;
        for (const Blocked& b : a.blocked) {
            V x = V::object();
            x.add("from_mm", number(b.from_m, Scale::milli));
            x.add("to_mm", number(b.to_m, Scale::milli));
            const bool sector = !b.wholeTurn || b.sectorFrom_rad != 0 || b.sectorTo_rad != 0;
            if (sector) {
                x.add("around_from_deg", number(b.sectorFrom_rad, Scale::degree));
                x.add("around_to_deg", number(b.sectorTo_rad, Scale::degree));
                if (b.wholeTurn) x.add("whole_turn", V::ofFlag(true));
            }
            addText(x, "why", b.why);
            blocked.push_back(std::move(x));
        }
        addList(out, "blocked", std::move(blocked));
    }
    std::vector<V> touches;
    for (const std::string& name : a.solids) touches.push_back(V::ofText(name));
    addList(out, "touches", std::move(touches));
    return out;
}

V support(const SupportSpec& s) {
    V out = V::object();
    out.add("id", V::ofText(s.id));
    out.add("kind", V::ofText(s.kind));
    out.add("name", V::ofText(s.name));
    V dimensions = V::object();
    const SupportKind* kind = supportKind(s.kind);
    for (const auto& [key, value] : s.dimensions) {
        bool angle = false;
        if (kind != nullptr) for (const SupportDimension& d : kind->dimensions) if (d.key == key) angle = d.angle;
        dimensions.add(key + (angle ? "_deg" : "_mm"), number(value, angle ? Scale::degree : Scale::milli));
    }
    if (!dimensions.items.empty()) out.add("dimensions", std::move(dimensions));
    V tubes = V::object();
    for (const auto& [rail, size] : s.tubes) tubes.add(rail, V::ofText(size));
    if (!tubes.items.empty()) out.add("tubes", std::move(tubes));
    V settings = V::object();
    for (const auto& [group, value] : s.settings) {
        const bool slides = groupSlides(s, group);
        settings.add(group + (slides ? "_mm" : "_deg"), number(value, slides ? Scale::milli : Scale::degree));
    }
    if (!settings.items.empty()) out.add("settings", std::move(settings));
    out.add("at_mm", vector(s.at_m, Scale::milli));
    out.add("yaw_deg", number(s.yaw_rad, Scale::degree));
    if (!s.carriedBy.empty()) out.add("carried_by", carrier(s.carriedBy, s.carriedByGroup));
    std::vector<V> list;
    for (const MovingGroup& g : s.groups) list.push_back(movingGroup(g));
    addList(out, "groups", std::move(list));
    for (AttachmentKind kindOf : {AttachmentKind::rail, AttachmentKind::edge, AttachmentKind::face, AttachmentKind::cloth}) {
        list.clear();
        for (const Attachment& a : s.attachments) if (a.kind == kindOf) list.push_back(attachment(a));
        addList(out, attachmentList(kindOf), std::move(list));
    }
    if (!std::is_sorted(s.attachments.begin(), s.attachments.end(), [](const Attachment& a, const Attachment& b) { return a.kind < b.kind; })) {
        list.clear();
        for (const Attachment& a : s.attachments) list.push_back(V::ofText(a.id));
        out.add("attachment_order", V::list(std::move(list)));
    }
    list.clear();
    for (const Landmark& l : s.landmarks) {
        V x = V::object();
        x.add("id", V::ofText(l.id));
        x.add("name", V::ofText(l.name));
        x.add("at_mm", vector(l.p_S, Scale::milli));
        addText(x, "group", l.group);
        list.push_back(std::move(x));
    }
    addList(out, "landmarks", std::move(list));
    list.clear();
    for (const SupportSolid& b : s.solids) {
        V x = V::object();
        x.add("name", V::ofText(b.name));
        addText(x, "group", b.group);
        x.add("solid", solid(b.solid));
        list.push_back(std::move(x));
    }
    addList(out, "solids", std::move(list));
    return out;
}

V person(const PersonSpec& p) {
    V out = V::object();
    addText(out, "name", p.name);
    V body = V::object();
    body.add("table", V::ofText(word(p.body.table)));
    if (p.body.percentile) body.add("percentile", number(*p.body.percentile, Scale::one));
    V dimensions = V::object();
    for (const auto& [name, value] : p.body.typed) if (name != "weightkg") dimensions.add(name, number(value, Scale::milli));
    if (!dimensions.items.empty()) body.add("dimensions_mm", std::move(dimensions));
    if (const auto kg = p.body.typed.find("weightkg"); kg != p.body.typed.end()) body.add("weight_kg", number(kg->second, Scale::one));
    out.add("body", std::move(body));
    out.add("on", V::ofText(p.on));
    out.add("lying", V::ofText(word(p.lying)));
    V posture = V::object();
    for (const auto& [name, value] : p.posture) posture.add(name, number(value, Scale::degree));
    if (!posture.items.empty()) out.add("posture_deg", std::move(posture));
    V ranges = V::object();
    for (const auto& [name, r] : p.activeRanges) {
        V x = V::list({number(r.min, Scale::degree), number(r.max, Scale::degree)});
        if (!r.source.empty()) x.items.push_back(V::ofText(r.source));
        ranges.add(name, std::move(x));
    }
    if (!ranges.items.empty()) out.add("active_ranges_deg", std::move(ranges));
    out.add("cushion_mm", number(p.cushion_m, Scale::milli));
    return out;
}

V site(const SiteSpec& s) {
    V out = V::object();
    out.add("id", V::ofText(s.id));
    out.add("name", V::ofText(s.name));
    addText(out, "control_site", s.controlSite);
    out.add("given", V::ofText(word(s.given)));
    const bool posture = s.given == SiteGiven::fromPosture;
    if (!posture || !s.point.isZero(0)) out.add("point_mm", vector(s.point, Scale::milli));
    const bool writeDirection = !posture || s.directionTyped || s.direction != Vec3(Vec3::UnitX());
    if (writeDirection) out.add("direction", vector(s.direction, Scale::one));
    if (s.directionTyped != (!posture || writeDirection)) out.add("direction_typed", V::ofFlag(s.directionTyped));
    if (s.given == SiteGiven::onBody || s.segment != SegmentId{}) out.add("segment", V::ofText(word(s.segment)));
    addFigure(out, "movement_mm", s.movement_m, Scale::milli);
    out.add("tolerance_mm", number(s.tolerance_m, Scale::milli));
    out.add("angle_tolerance_deg", number(s.angleTolerance_rad, Scale::degree));
    addFigure(out, "force_N", s.force_N, Scale::one);
    addFigure(out, "spread_mm", s.spread_m, Scale::milli);
    if (!s.goesWithSupport.empty()) out.add("goes_with", carrier(s.goesWithSupport, s.goesWithGroup));
    return out;
}

V joint(const JointSetting& s, const Element& element) {
    V out = V::object();
    const auto q = [&](std::size_t i, Scale scale) { return number(i < s.q.size() ? s.q[i] : 0.0, scale); };
    switch (jointForm(element)) {
        case JointForm::angle: out.add("angle_deg", q(0, Scale::degree)); break;
        case JointForm::swingTwist:
            out.add("swing_deg", V::list({q(0, Scale::degree), q(1, Scale::degree)}));
            out.add("twist_deg", q(2, Scale::degree));
            break;
        case JointForm::slide: out.add("slide_mm", q(0, Scale::milli)); break;
        case JointForm::curvature: {
            V arcs = V::list();
            for (std::size_t a = 0; a < 3; ++a) arcs.items.push_back(V::list({q(2 * a, Scale::one), q(2 * a + 1, Scale::one)}));
            out.add("curvature_per_m", std::move(arcs));
            break;
        }
    }
    addFlag(out, "kept", s.kept);
    return out;
}

V mountPart(const MountPart& m, const Plan& plan) {
    V out = V::object();
    out.add("part", V::ofText(m.part));
    addFlag(out, "reversed", m.reversed);
    addIf(out, "clocking_deg", m.clocking_rad, Scale::degree);
    addFlag(out, "clocking_kept", m.clockingKept);
    V joints = V::object();
    if (const Part* part = plan.part(m.part))
        for (const auto& [name, setting] : m.joints)
            for (const Element& e : part->elements)
                if (e.freedoms() > 0 && e.name == name) {
                    joints.add(name, joint(setting, e));
                    break;
                }
    if (!joints.items.empty()) out.add("joints", std::move(joints));
    return out;
}

V mount(const Mount& m, const Plan& plan) {
    V out = V::object();
    out.add("id", V::ofText(m.id));
    out.add("name", V::ofText(m.name));
    out.add("site", V::ofText(m.site));
    V fixed;
    if (!m.support.empty() || !m.attachment.empty() || !(m.place == Placement{}) || m.placeKept) {
        fixed = V::object();
        fixed.add("support", V::ofText(m.support));
        fixed.add("attachment", V::ofText(m.attachment));
        addIf(fixed, "along_mm", m.place.along_m, Scale::milli);
        addIf(fixed, "around_deg", m.place.around_rad, Scale::degree);
        if (m.place.fromBelow) fixed.add("side", V::ofText("below"));
        addIf(fixed, "x_mm", m.place.x_m, Scale::milli);
        addIf(fixed, "y_mm", m.place.y_m, Scale::milli);
        addIf(fixed, "yaw_deg", m.place.yaw_rad, Scale::degree);
        addFlag(fixed, "kept", m.placeKept);
    }
    out.add("fixed_to", std::move(fixed));
    std::vector<V> parts;
    for (const MountPart& part : m.parts) parts.push_back(mountPart(part, plan));
    out.add("parts", V::list(std::move(parts)));
    return out;
}

V option(const PlanOption& o, const Plan& plan) {
    V out = V::object();
    out.add("id", V::ofText(o.id));
    out.add("name", V::ofText(o.name));
    addText(out, "notes", o.notes);
    std::vector<V> list;
    for (const Mount& m : o.mounts) list.push_back(mount(m, plan));
    out.add("mounts", V::list(std::move(list)));
    list.clear();
    for (const KeepOut& k : o.keepOuts) {
        V x = V::object();
        x.add("id", V::ofText(k.id));
        x.add("name", V::ofText(k.name));
        x.add("solid", solid(k.solid));
        x.add("margin_mm", number(k.margin_m, Scale::milli));
        if (!k.support.empty()) x.add("goes_with", carrier(k.support, k.group));
        list.push_back(std::move(x));
    }
    addList(out, "keep_outs", std::move(list));
    return out;
}

V limits(const CheckLimits& l) {
    V out = V::object();
    out.add("clearance_body_mm", number(l.clearanceBody_m, Scale::milli));
    out.add("clearance_support_mm", number(l.clearanceSupport_m, Scale::milli));
    out.add("clearance_mount_mm", number(l.clearanceMount_m, Scale::milli));
    out.add("press_factor", number(l.pressFactor, Scale::one));
    out.add("knock_N", number(l.knock_N, Scale::one));
    out.add("thread_turns", number(l.threadTurns, Scale::one));
    out.add("thread_factor", number(l.threadFactor, Scale::one));
    return out;
}

}  // namespace

std::string planToJson(const Plan& plan) {
    V out = V::object();
    out.add("hither_plan", whole(1));
    out.add("id", V::ofText(plan.id));
    out.add("title", V::ofText(plan.title));
    addText(out, "shows", plan.shows);
    addText(out, "notes", plan.notes);
    out.add("revision", whole(plan.revision));
    out.add("made_utc", V::ofText(plan.made_utc));
    out.add("changed_utc", V::ofText(plan.changed_utc));
    out.add("display", V::ofText(word(plan.display)));
    out.add("currency", V::ofText(plan.currency));
    out.add("limits", limits(plan.limits));
    std::vector<V> list;
    for (const SupportSpec& s : plan.supports) list.push_back(support(s));
    out.add("supports", V::list(std::move(list)));
    if (plan.person) out.add("person", person(*plan.person));
    list.clear();
    for (const SiteSpec& s : plan.sites) list.push_back(site(s));
    out.add("sites", V::list(std::move(list)));
    list.clear();
    for (const auto& part : plan.parts) list.push_back(V::from(writePart(*part)));
    out.add("parts", V::list(std::move(list)));
    list.clear();
    for (const PlanOption& o : plan.options) list.push_back(option(o, plan));
    out.add("options", V::list(std::move(list)));
    list.clear();
    for (const ExtraItem& e : plan.extraItems) {
        V x = V::object();
        x.add("id", V::ofText(e.id));
        x.add("name", V::ofText(e.name));
        x.add("count", whole(e.count));
        if (e.price) x.add("price", money(*e.price));
        addText(x, "notes", e.notes);
        list.push_back(std::move(x));
    }
    addList(out, "extra_items", std::move(list));
    list.clear();
    for (const AcceptedFinding& a : plan.accepted) {
        V x = V::object();
        x.add("option", V::ofText(a.option));
        x.add("finding", V::ofText(a.finding));
        addText(x, "note", a.note);
        addText(x, "who", a.who);
        addText(x, "when_utc", a.when_utc);
        list.push_back(std::move(x));
    }
    addList(out, "accepted", std::move(list));
    list.clear();
    for (const HistoryEntry& h : plan.history) {
        V x = V::object();
        x.add("revision", whole(h.revision));
        addText(x, "when_utc", h.when_utc);
        addText(x, "who", h.who);
        addText(x, "what", h.what);
        list.push_back(std::move(x));
    }
    addList(out, "history", std::move(list));
    return printJsonValue(out);
}

}  // namespace hither
