#include <algorithm>
#include <set>

#include <nlohmann/json.hpp>

#include "core/catalogue/solid_json.h"
#include "core/storage/file_bytes.h"
#include "core/storage/fresh.h"
#include "core/storage/json_object_reader.h"
#include "core/storage/plan_json.h"
#include "core/storage/plan_rules.h"
#include "core/storage/plan_units.h"

namespace hither {
namespace {

using Code = StorageError::Code;
using Kind = JsonValue::Kind;

std::string numbered(const char* word, std::size_t i) { return std::string(word) + std::to_string(i + 1); }
std::string inList(const std::string& place, std::size_t i) { return place + "/" + std::to_string(i); }
bool endsWith(const std::string& s, const std::string& tail) { return s.size() > tail.size() && s.compare(s.size() - tail.size(), tail.size(), tail) == 0; }

class PlanReader {
public:
    PlanReader(const PlanJsonContext& context, ReadProblems& problems) : context_(context), problems_(problems) {}

    Plan read(const JsonValue& json) {
        ObjectReader top(problems_, &json, "");
        int format = 0;
        top.whole("hither_plan", format);
        if (!top.text("id", plan_.id)) plan_.id = context_.newId ? context_.newId() : randomUuid();
        top.text("title", plan_.title);
        top.text("shows", plan_.shows);
        top.text("notes", plan_.notes);
        top.whole("revision", plan_.revision);
        const std::string now = context_.now_utc ? context_.now_utc() : utcNow();
        if (!top.text("made_utc", plan_.made_utc)) plan_.made_utc = now;
        if (!top.text("changed_utc", plan_.changed_utc)) plan_.changed_utc = now;
        top.choice<UnitSystem>("display", plan_.display, unitSystemFromWord, {UnitSystem::metric, UnitSystem::inch});
        top.text("currency", plan_.currency);
        limits(top);
        eachObject(top, "supports", planBounds::supports, [&](ObjectReader& o, std::size_t i) { plan_.supports.push_back(support(o, i)); });
        if (const JsonValue* p = top.get("person")) person(p);
        eachObject(top, "sites", planBounds::sites, [&](ObjectReader& o, std::size_t i) { plan_.sites.push_back(site(o, i)); });
        parts(top);
        eachObject(top, "options", planBounds::options, [&](ObjectReader& o, std::size_t i) { plan_.options.push_back(option(o, i)); });
        eachObject(top, "extra_items", planBounds::extraItems, [&](ObjectReader& o, std::size_t i) {
            ExtraItem e;
            e.id = numbered("item-", i);
            o.text("id", e.id);
            if (!o.text("name", e.name) && !o.has("name")) o.missing("name", "what the item is");
            o.whole("count", e.count);
            o.money("price", e.price, plan_.currency);
            o.text("notes", e.notes);
            plan_.extraItems.push_back(std::move(e));
        });
        eachObject(top, "accepted", planBounds::accepted, [&](ObjectReader& o, std::size_t) {
            AcceptedFinding a;
            o.text("option", a.option);
            if (!o.text("finding", a.finding) && !o.has("finding")) o.missing("finding", "the id of a finding");
            o.text("note", a.note);
            o.text("who", a.who);
            o.text("when_utc", a.when_utc);
            plan_.accepted.push_back(std::move(a));
        });
        eachObject(top, "history", planBounds::history, [&](ObjectReader& o, std::size_t) {
            HistoryEntry h;
            o.whole("revision", h.revision);
            o.text("when_utc", h.when_utc);
            o.text("who", h.who);
            o.text("what", h.what);
            plan_.history.push_back(std::move(h));
        });
        top.finish();
        return std::move(plan_);
    }

private:
    template <class Each>
    void eachObject(ObjectReader& owner, const char* key, std::size_t most, Each each) {
        const std::vector<JsonValue>* items = owner.list(key, most);
        if (items == nullptr) return;
        for (std::size_t i = 0; i < items->size() && !problems_.full(); ++i) {
            ObjectReader o(problems_, &(*items)[i], inList(owner.placeOf(key), i));
            each(o, i);
            o.finish();
        }
    }

    void limits(ObjectReader& top) {
        ObjectReader o(problems_, top.get("limits"), "limits");
        CheckLimits& l = plan_.limits;
        o.number("clearance_body_mm", Scale::milli, l.clearanceBody_m);
        o.number("clearance_support_mm", Scale::milli, l.clearanceSupport_m);
        o.number("clearance_mount_mm", Scale::milli, l.clearanceMount_m);
        o.number("press_factor", Scale::one, l.pressFactor);
        o.number("knock_N", Scale::one, l.knock_N);
        o.number("thread_turns", Scale::one, l.threadTurns);
        o.number("thread_factor", Scale::one, l.threadFactor);
        o.finish();
    }

    std::optional<Solid> solid(ObjectReader& o) {
        const JsonValue* v = o.get("solid");
        if (v == nullptr) {
            o.missing("solid", "a sphere, capsule, cylinder, box, rounded_box or hull");
            return std::nullopt;
        }
        std::vector<PartProblem> found;
        std::optional<Solid> read = readSolid(v->toJson(), o.placeOf("solid"), found, planBounds::length_m);
        for (PartProblem& p : found) problems_.add(Code::badValue, std::move(p.key), std::move(p.found), std::move(p.allowed));
        return read;
    }

    /// {"support", "group"}; the support may be left out when there is only one.
    void carrier(ObjectReader& owner, const char* key, std::string& support, std::string& group) {
        const JsonValue* v = owner.get(key);
        if (v == nullptr) return;
        ObjectReader o(problems_, v, owner.placeOf(key));
        if (!o.text("support", support) && !o.has("support")) {
            if (plan_.supports.size() == 1) support = plan_.supports.front().id;
            else o.missing("support", "the id of a support");
        }
        o.text("group", group);
        o.finish();
    }

    SupportSpec support(ObjectReader& o, std::size_t i) {
        SupportSpec s;
        s.id = numbered("support-", i);
        o.text("id", s.id);
        if (!o.text("kind", s.kind) && !o.has("kind")) o.missing("kind", "the kind of the support");
        const SupportKind* kind = supportKind(s.kind);
        if (!o.text("name", s.name)) s.name = kind == nullptr ? numbered("Support ", i) : kind->name;
        if (const JsonValue* m = o.map("dimensions")) dimensions(*m, o.placeOf("dimensions"), kind, s);
        if (const JsonValue* m = o.map("tubes")) {
            for (std::size_t k = 0; k < m->items.size(); ++k) {
                if (m->items[k].kind == Kind::text) s.tubes[m->keys[k]] = m->items[k].text;
                else problems_.add(Code::wrongType, o.placeOf("tubes") + "/" + m->keys[k], word(m->items[k].kind), "a tube such as \"7/8 in\"");
            }
        }
        o.vector("at_mm", Scale::milli, s.at_m);
        o.number("yaw_deg", Scale::degree, s.yaw_rad);
        if (const JsonValue* v = o.get("carried_by")) {
            ObjectReader c(problems_, v, o.placeOf("carried_by"));
            if (!c.text("support", s.carriedBy) && !c.has("support")) c.missing("support", "the id of a support");
            c.text("group", s.carriedByGroup);
            c.finish();
        }
        eachObject(o, "groups", planBounds::groups, [&](ObjectReader& g, std::size_t k) { s.groups.push_back(movingGroup(g, k)); });
        // Settings need the groups, to know which turn and which slide.
        if (const JsonValue* m = o.map("settings")) settings(*m, o.placeOf("settings"), s);
        attachments(o, s);
        eachObject(o, "landmarks", planBounds::landmarks, [&](ObjectReader& l, std::size_t k) {
            Landmark mark;
            mark.id = numbered("landmark-", k);
            l.text("id", mark.id);
            if (!l.text("name", mark.name)) mark.name = mark.id;
            if (!l.vector("at_mm", Scale::milli, mark.p_S) && !l.has("at_mm")) l.missing("at_mm", "a point [x, y, z]");
            l.text("group", mark.group);
            s.landmarks.push_back(std::move(mark));
        });
        eachObject(o, "solids", planBounds::solids, [&](ObjectReader& b, std::size_t k) {
            SupportSolid body;
            body.name = numbered("solid-", k);
            b.text("name", body.name);
            b.text("group", body.group);
            if (const auto read = solid(b)) body.solid = *read;
            s.solids.push_back(std::move(body));
        });
        return s;
    }

    void dimensions(const JsonValue& m, const std::string& place, const SupportKind* kind, SupportSpec& s) {
        for (std::size_t k = 0; k < m.items.size(); ++k) {
            const std::string& key = m.keys[k];
            const bool deg = endsWith(key, "_deg"), mm = endsWith(key, "_mm");
            const std::string name = deg ? key.substr(0, key.size() - 4) : mm ? key.substr(0, key.size() - 3) : key;
            const SupportDimension* known = nullptr;
            std::vector<std::string> keys;
            if (kind != nullptr) {
                for (const SupportDimension& d : kind->dimensions) {
                    keys.push_back(d.key + (d.angle ? "_deg" : "_mm"));
                    if (d.key == name && d.angle == deg && (deg || mm)) known = &d;
                }
            }
            if (kind == nullptr && (deg || mm)) continue;  // the unknown kind is the problem
            if (known == nullptr) {
                problems_.add(Code::unknownKey, place + "/" + key.substr(0, 100), "a dimension that is not known", kind == nullptr ? "keys that end in _mm or _deg" : dimensionKeys(*kind), nearestName(key, keys));
                continue;
            }
            double value = 0;
            if (ObjectReader::numberAt(problems_, m.items[k], place + "/" + key, deg ? Scale::degree : Scale::milli, value)) s.dimensions[name] = value;
        }
    }

    void settings(const JsonValue& m, const std::string& place, SupportSpec& s) {
        for (std::size_t k = 0; k < m.items.size(); ++k) {
            const std::string& key = m.keys[k];
            const bool deg = endsWith(key, "_deg"), mm = endsWith(key, "_mm");
            const std::string group = deg ? key.substr(0, key.size() - 4) : mm ? key.substr(0, key.size() - 3) : key;
            const std::optional<bool> slides = groupSlidesIfKnown(s, group);
            if ((!deg && !mm) || (slides && *slides != mm)) {
                problems_.add(Code::unknownKey, place + "/" + key.substr(0, 100), "a setting that is not known", "a moving group's id followed by _deg when it turns, _mm when it slides",
                              slides ? group + (*slides ? "_mm" : "_deg") : std::string());
                continue;
            }
            if (!slides && supportKind(s.kind) != nullptr) {
                std::vector<std::string> names = groupKeys(s);
                std::string all;
                for (const std::string& n : names) all += (all.empty() ? "" : ", ") + n;
                problems_.add(Code::unknownKey, place + "/" + key.substr(0, 100), "a moving group that the support does not have", all.empty() ? "none" : all, nearestName(key, names));
                continue;
            }
            double value = 0;
            if (ObjectReader::numberAt(problems_, m.items[k], place + "/" + key, deg ? Scale::degree : Scale::milli, value)) s.settings[group] = value;
        }
    }

    MovingGroup movingGroup(ObjectReader& o, std::size_t i) {
        MovingGroup g;
        g.id = numbered("group-", i);
        o.text("id", g.id);
        if (!o.text("name", g.name)) g.name = g.id;
        o.text("parent", g.parent);
        o.vector("pivot_mm", Scale::milli, g.pivot);
        o.vector("axis", Scale::one, g.axis);
        std::string kind;
        if (o.text("kind", kind)) {
            if (kind == "slide") g.slides = true;
            else if (kind != "turn") o.problem("kind", Code::badValue, "\"" + kind.substr(0, 60) + "\"", "turn, slide");
        }
        const Scale scale = g.slides ? Scale::milli : Scale::degree;
        const std::string unit = g.slides ? "_mm" : "_deg";
        if (!o.number("min" + unit, scale, g.min) && !o.has("min" + unit)) o.missing("min" + unit, "the least setting");
        if (!o.number("max" + unit, scale, g.max) && !o.has("max" + unit)) o.missing("max" + unit, "the largest setting");
        o.number("value" + unit, scale, g.value);
        return g;
    }

    void attachments(ObjectReader& o, SupportSpec& s) {
        for (AttachmentKind kind : {AttachmentKind::rail, AttachmentKind::edge, AttachmentKind::face, AttachmentKind::cloth})
            eachObject(o, attachmentList(kind), planBounds::attachments, [&](ObjectReader& a, std::size_t i) { s.attachments.push_back(attachment(a, kind, i)); });
        // Written only when the attachments of a plan do not stand in the order of their kinds.
        std::vector<std::string> order;
        if (!o.texts("attachment_order", order)) return;
        std::vector<Attachment> sorted;
        for (const std::string& id : order)
            for (const Attachment& a : s.attachments) if (a.id == id && sorted.size() < s.attachments.size()) { sorted.push_back(a); break; }
        std::set<std::string> distinct(order.begin(), order.end());
        if (sorted.size() != s.attachments.size() || distinct.size() != order.size() || order.size() != sorted.size())
            o.problem("attachment_order", Code::badValue, std::to_string(order.size()) + " ids", "the id of every rail, edge, face and cloth, each once");
        else s.attachments = std::move(sorted);
    }

    void line(ObjectReader& o, Attachment& a) {
        if (!o.vector("from_mm", Scale::milli, a.a) && !o.has("from_mm")) o.missing("from_mm", "a point [x, y, z]");
        if (!o.vector("to_mm", Scale::milli, a.b) && !o.has("to_mm")) o.missing("to_mm", "a point [x, y, z]");
    }

    Attachment attachment(ObjectReader& o, AttachmentKind kind, std::size_t i) {
        Attachment a;
        a.kind = kind;
        a.id = numbered((std::string(word(kind)) + "-").c_str(), i);
        o.text("id", a.id);
        if (!o.text("name", a.name)) a.name = a.id;
        o.text("group", a.group);
        switch (kind) {
            case AttachmentKind::rail: {
                line(o, a);
                // An upright rail has no upper side: its zero points forward.
                const Vec3 along = a.b - a.a;
                if (along.norm() > 0 && std::abs(along.z()) > 0.99 * along.norm()) a.reference = Vec3::UnitX();
                o.vector("reference", Scale::one, a.reference);
                o.choice<Section>("section", a.section, sectionFromWord, {Section::round, Section::square});
                Basis basis;
                if (const JsonValue* b = o.get("basis")) {
                    if (b->kind == Kind::object) {
                        ObjectReader bo(problems_, b, o.placeOf("basis"));
                        bo.choice<BasisKind>("kind", basis.kind, basisFromWord, {BasisKind::measured, BasisKind::published, BasisKind::assumed});
                        bo.text("source", basis.source);
                        bo.finish();
                    } else {
                        o.choice<BasisKind>("basis", basis.kind, basisFromWord, {BasisKind::measured, BasisKind::published, BasisKind::assumed});
                    }
                }
                if (o.text("size", a.tubeAsTyped) && !a.tubeAsTyped.empty()) {
                    if (const auto tube = parseTube(a.tubeAsTyped)) a.outside_m = {tube.value->outside_m, basis};
                    else o.problem("size", Code::badValue, "\"" + a.tubeAsTyped.substr(0, 60) + "\"", "a tube such as 7/8 in, NPS 3/4, EMT 1/2 or 22.2 mm");
                }
                // Present and null: not known, whatever the size says.
                if (const JsonValue* v = o.raw("outside_mm")) {
                    a.outside_m = {};
                    if (v->kind != Kind::null) o.figure("outside_mm", Scale::milli, a.outside_m);
                }
                break;
            }
            case AttachmentKind::edge:
                line(o, a);
                o.vector("up", Scale::one, a.up);
                o.figure("thickness_mm", Scale::milli, a.thickness_m);
                o.number("depth_mm", Scale::milli, a.depth_m);
                break;
            case AttachmentKind::face: {
                if (!o.vector("middle_mm", Scale::milli, a.a) && !o.has("middle_mm")) o.missing("middle_mm", "a point [x, y, z]");
                a.reference = Vec3::UnitX();
                o.vector("x_axis", Scale::one, a.reference);
                o.vector("up", Scale::one, a.up);
                if (!o.pair("size_mm", Scale::milli, a.sizeX_m, a.sizeY_m) && !o.has("size_mm")) o.missing("size_mm", "[along x_axis, across it]");
                break;
            }
            case AttachmentKind::cloth:
                line(o, a);
                o.vector("up", Scale::one, a.up);
                o.figure("thickness_mm", Scale::milli, a.thickness_m);
                break;
        }
        if (kind != AttachmentKind::face)
            eachObject(o, "blocked", planBounds::blocked, [&](ObjectReader& b, std::size_t) {
                Blocked x;
                b.number("from_mm", Scale::milli, x.from_m);
                x.to_m = a.length_m();
                b.number("to_mm", Scale::milli, x.to_m);
                const bool from = b.number("around_from_deg", Scale::degree, x.sectorFrom_rad);
                const bool to = b.number("around_to_deg", Scale::degree, x.sectorTo_rad);
                x.wholeTurn = !from && !to;
                b.flag("whole_turn", x.wholeTurn);
                b.text("why", x.why);
                a.blocked.push_back(std::move(x));
            });
        o.texts("touches", a.solids);
        return a;
    }

    void person(const JsonValue* json) {
        ObjectReader o(problems_, json, "person");
        if (!o.isObject()) return;
        PersonSpec p;
        o.text("name", p.name);
        {
            ObjectReader b(problems_, o.get("body"), "person/body");
            b.choice<BodyTable>("table", p.body.table, bodyTableFromWord, {BodyTable::woman, BodyTable::man, BodyTable::child});
            double percentile = 0;
            if (b.number("percentile", Scale::one, percentile)) p.body.percentile = percentile;
            if (const JsonValue* m = b.map("dimensions_mm")) numbers(*m, "person/body/dimensions_mm", Scale::milli, p.body.typed);
            if (const auto found = p.body.typed.find("weightkg"); found != p.body.typed.end()) {
                b.problem("dimensions_mm/weightkg", Code::unknownKey, "a weight among lengths", "weight_kg beside dimensions_mm");
                p.body.typed.erase(found);
            }
            double kg = 0;
            if (b.number("weight_kg", Scale::one, kg)) p.body.typed["weightkg"] = kg;
            b.finish();
        }
        if (!o.text("on", p.on) && !o.has("on") && !plan_.supports.empty()) p.on = plan_.supports.front().id;
        o.choice<PersonSpec::Lying>("lying", p.lying, lyingFromWord, {PersonSpec::Lying::onBack, PersonSpec::Lying::onLeft, PersonSpec::Lying::onRight});
        if (const JsonValue* m = o.map("posture_deg")) numbers(*m, "person/posture_deg", Scale::degree, p.posture);
        if (const JsonValue* m = o.map("active_ranges_deg")) {
            for (std::size_t k = 0; k < m->items.size(); ++k) {
                const JsonValue& v = m->items[k];
                const std::string place = "person/active_ranges_deg/" + m->keys[k].substr(0, 100);
                JointRange range;
                if (v.kind != Kind::list || v.items.size() < 2 || v.items.size() > 3 || (v.items.size() == 3 && v.items[2].kind != Kind::text)) {
                    problems_.add(Code::wrongType, place, word(v.kind), "[least, largest] or [least, largest, \"who says so\"]");
                    continue;
                }
                if (!ObjectReader::numberAt(problems_, v.items[0], place + "/0", Scale::degree, range.min)) continue;
                if (!ObjectReader::numberAt(problems_, v.items[1], place + "/1", Scale::degree, range.max)) continue;
                if (v.items.size() == 3) range.source = v.items[2].text;
                p.activeRanges[m->keys[k]] = range;
            }
        }
        o.number("cushion_mm", Scale::milli, p.cushion_m);
        o.finish();
        plan_.person = std::move(p);
    }

    void numbers(const JsonValue& m, const std::string& place, Scale scale, std::map<std::string, double>& out) {
        for (std::size_t k = 0; k < m.items.size(); ++k) {
            if (m.items[k].kind == Kind::null) continue;
            double value = 0;
            if (ObjectReader::numberAt(problems_, m.items[k], place + "/" + m.keys[k].substr(0, 100), scale, value)) out[m.keys[k]] = value;
        }
    }

    SiteSpec site(ObjectReader& o, std::size_t i) {
        SiteSpec s;
        s.id = numbered("site-", i);
        o.text("id", s.id);
        o.text("control_site", s.controlSite);
        if (!o.text("name", s.name)) {
            s.name = numbered("Site ", i);
            for (const auto& [id, name] : controlSites()) if (id == s.controlSite) s.name = name;
        }
        // How it is given follows from what is there, unless it is said.
        const bool hasSegment = o.has("segment"), hasPoint = o.has("point_mm");
        s.given = hasSegment ? SiteGiven::onBody : !hasPoint && !s.controlSite.empty() ? SiteGiven::fromPosture : SiteGiven::typed;
        o.choice<SiteGiven>("given", s.given, siteGivenFromWord, {SiteGiven::typed, SiteGiven::onBody, SiteGiven::fromPosture});
        const bool pointRead = o.vector("point_mm", Scale::milli, s.point);
        if (!pointRead && !hasPoint && s.given != SiteGiven::fromPosture) o.missing("point_mm", "a point [x, y, z]");
        const bool directionRead = o.vector("direction", Scale::one, s.direction);
        if (!directionRead && !o.has("direction") && s.given != SiteGiven::fromPosture) o.missing("direction", "the way the body part moves [x, y, z]");
        s.directionTyped = s.given != SiteGiven::fromPosture || directionRead;
        o.flag("direction_typed", s.directionTyped);
        std::string segment;
        if (o.text("segment", segment)) {
            if (const auto id = segmentFromWord(segment)) s.segment = *id;
            else o.problem("segment", Code::badValue, "\"" + segment.substr(0, 60) + "\"", "a body segment such as forearm_right, as in resources/plan_format.md");
        } else if (s.given == SiteGiven::onBody && !hasSegment) {
            o.missing("segment", "the body segment that carries the point");
        }
        o.figure("movement_mm", Scale::milli, s.movement_m);
        o.number("tolerance_mm", Scale::milli, s.tolerance_m);
        o.number("angle_tolerance_deg", Scale::degree, s.angleTolerance_rad);
        o.figure("force_N", Scale::one, s.force_N);
        o.figure("spread_mm", Scale::milli, s.spread_m);
        carrier(o, "goes_with", s.goesWithSupport, s.goesWithGroup);
        return s;
    }

    void parts(ObjectReader& top) {
        const std::vector<JsonValue>* items = top.list("parts", planBounds::parts);
        if (items == nullptr) return;
        for (std::size_t i = 0; i < items->size() && !problems_.full(); ++i) {
            PartRead read = readPart((*items)[i].toJson(), context_.file);
            for (PartProblem& p : read.problems)
                problems_.add(Code::badValue, inList("parts", i) + (p.key.empty() ? "" : "/" + p.key), std::move(p.found), std::move(p.allowed));
            if (read.part) plan_.parts.push_back(std::make_shared<const Part>(std::move(*read.part)));
            else partsWrong_ = true;
        }
    }

    /// A part by id: the plan's own copy, or the catalogue's, which is copied into the plan.
    const Part* findPart(const std::string& id) {
        if (const Part* own = plan_.part(id)) return own;
        if (context_.catalogue == nullptr) return nullptr;
        for (const auto& part : context_.catalogue->parts())
            if (part->id == id) {
                plan_.parts.push_back(part);
                return part.get();
            }
        return nullptr;
    }

    PlanOption option(ObjectReader& o, std::size_t i) {
        PlanOption option;
        option.id = numbered("option-", i);
        o.text("id", option.id);
        if (!o.text("name", option.name)) option.name = numbered("Option ", i);
        o.text("notes", option.notes);
        eachObject(o, "mounts", planBounds::mountsInOption, [&](ObjectReader& m, std::size_t k) { option.mounts.push_back(mount(m, k)); });
        eachObject(o, "keep_outs", planBounds::keepOutsInOption, [&](ObjectReader& k, std::size_t n) {
            KeepOut keep;
            keep.id = numbered("keep-out-", n);
            k.text("id", keep.id);
            if (!k.text("name", keep.name)) keep.name = numbered("Keep-out ", n);
            if (const auto read = solid(k)) keep.solid = *read;
            k.number("margin_mm", Scale::milli, keep.margin_m);
            carrier(k, "goes_with", keep.support, keep.group);
            option.keepOuts.push_back(std::move(keep));
        });
        return option;
    }

    Mount mount(ObjectReader& o, std::size_t i) {
        Mount m;
        m.id = numbered("mount-", i);
        o.text("id", m.id);
        if (!o.text("name", m.name)) m.name = numbered("Mount ", i);
        if (!o.text("site", m.site) && !o.has("site") && plan_.sites.size() == 1) m.site = plan_.sites.front().id;
        const JsonValue* fixed = o.raw("fixed_to");
        if (fixed == nullptr) {
            o.missing("fixed_to", "what the mount is fixed to: {\"support\", \"attachment\", ...}, or null while it is not");
        } else if (fixed->kind != Kind::null) {
            ObjectReader f(problems_, fixed, o.placeOf("fixed_to"));
            if (!f.text("support", m.support) && f.isObject() && !f.has("support")) {
                if (plan_.supports.size() == 1) m.support = plan_.supports.front().id;
                else f.missing("support", "the id of a support");
            }
            if (!f.text("attachment", m.attachment) && f.isObject() && !f.has("attachment")) f.missing("attachment", "the id of a rail, edge, face or cloth of the support");
            f.number("along_mm", Scale::milli, m.place.along_m);
            f.number("around_deg", Scale::degree, m.place.around_rad);
            std::string side;
            if (f.text("side", side)) {
                if (side == "below") m.place.fromBelow = true;
                else if (side != "above") f.problem("side", Code::badValue, "\"" + side.substr(0, 60) + "\"", "above, below");
            }
            f.number("x_mm", Scale::milli, m.place.x_m);
            f.number("y_mm", Scale::milli, m.place.y_m);
            f.number("yaw_deg", Scale::degree, m.place.yaw_rad);
            f.flag("kept", m.placeKept);
            f.finish();
        }
        if (const std::vector<JsonValue>* items = o.list("parts", mostPartsInMount))
            for (std::size_t k = 0; k < items->size() && !problems_.full(); ++k) m.parts.push_back(mountPart((*items)[k], inList(o.placeOf("parts"), k)));
        return m;
    }

    MountPart mountPart(const JsonValue& json, const std::string& place) {
        MountPart m;
        if (json.kind == Kind::text) {
            m.part = json.text;
            known(m.part, place);
            return m;
        }
        ObjectReader o(problems_, &json, place);
        if (!o.text("part", m.part)) {
            if (o.isObject() && !o.has("part")) o.missing("part", "the id of a part");
            return m;
        }
        const Part* part = known(m.part, o.placeOf("part"));
        o.flag("reversed", m.reversed);
        o.number("clocking_deg", Scale::degree, m.clocking_rad);
        o.flag("clocking_kept", m.clockingKept);
        if (const JsonValue* joints = o.map("joints"); joints != nullptr && part != nullptr) {
            for (std::size_t k = 0; k < joints->items.size(); ++k) {
                const std::string& name = joints->keys[k];
                const std::string at = o.placeOf("joints") + "/" + name.substr(0, 100);
                const Element* element = nullptr;
                std::vector<std::string> names;
                for (const Element& e : part->elements) {
                    if (e.freedoms() == 0) continue;
                    names.push_back(e.name);
                    if (e.name == name) element = &e;
                }
                if (element != nullptr) {
                    m.joints[name] = joint(joints->items[k], at, *element);
                    continue;
                }
                std::string all;
                for (const std::string& n : names) all += (all.empty() ? "" : ", ") + n;
                problems_.add(Code::unknownKey, at, "a joint that part " + m.part + " does not have", all.empty() ? "no joints" : all, nearestName(name, names));
            }
        }
        o.finish();
        return m;
    }

    const Part* known(const std::string& id, const std::string& place) {
        const Part* part = findPart(id);
        if (part != nullptr || partsWrong_) return part;  // a copy that could not be read is a problem already
        std::vector<std::string> ids;
        for (const auto& p : plan_.parts) ids.push_back(p->id);
        if (context_.catalogue != nullptr) for (const auto& p : context_.catalogue->parts()) ids.push_back(p->id);
        problems_.add(Code::badValue, place, "\"" + id.substr(0, 100) + "\"", "the id of a part of the plan or of the catalogue", nearestName(id, ids));
        return nullptr;
    }

    JointSetting joint(const JsonValue& json, const std::string& place, const Element& element) {
        JointSetting s;
        s.q = homeValues(element);
        ObjectReader o(problems_, &json, place);
        switch (jointForm(element)) {
            case JointForm::angle: o.number("angle_deg", Scale::degree, s.q[0]); break;
            case JointForm::swingTwist:
                o.pair("swing_deg", Scale::degree, s.q[0], s.q[1]);
                o.number("twist_deg", Scale::degree, s.q[2]);
                break;
            case JointForm::slide: o.number("slide_mm", Scale::milli, s.q[0]); break;
            case JointForm::curvature:
                if (const JsonValue* v = o.get("curvature_per_m")) {
                    const std::string at = o.placeOf("curvature_per_m");
                    if (v->kind != Kind::list || v->items.size() != 3) {
                        problems_.add(Code::wrongType, at, word(v->kind), "[[kx, ky], [kx, ky], [kx, ky]], one pair an arc");
                        break;
                    }
                    for (std::size_t a = 0; a < 3; ++a) {
                        const JsonValue& arc = v->items[a];
                        if (arc.kind != Kind::list || arc.items.size() != 2) {
                            problems_.add(Code::wrongType, inList(at, a), word(arc.kind), "[kx, ky]");
                            continue;
                        }
                        for (std::size_t c = 0; c < 2; ++c) ObjectReader::numberAt(problems_, arc.items[c], inList(inList(at, a), c), Scale::one, s.q[2 * a + c]);
                    }
                }
                break;
        }
        o.flag("kept", s.kept);
        o.finish();
        return s;
    }

    const PlanJsonContext& context_;
    ReadProblems& problems_;
    Plan plan_;
    bool partsWrong_ = false;
};

std::vector<StorageError> named(std::vector<StorageError> problems, const std::string& file) {
    for (StorageError& p : problems) {
        p = printable(std::move(p));
        p.file = file;
    }
    return problems;
}

}  // namespace

PlanRead planFromJson(std::string_view text, const PlanJsonContext& context) {
    PlanRead result;
    if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);
    const JsonValueRead json = readJsonValue(text);
    if (!json.value) {
        result.problems = named({*json.fault}, context.file);
        return result;
    }
    // What it is comes first: nothing else is worth saying about something that is no plan.
    const JsonValue* format = json.value->find("hither_plan");
    ReadProblems problems;
    if (json.value->kind != Kind::object || format == nullptr) {
        problems.add(json.value->kind == Kind::object ? Code::missingKey : Code::notAPlan, "hither_plan", json.value->kind == Kind::object ? "nothing" : word(json.value->kind),
                     "an object with the key \"hither_plan\": 1");
    } else if (format->kind != Kind::number || format->text != "1") {
        const bool newer = format->kind == Kind::number && siFromText(format->text, Scale::one).value_or(0) > 1;
        problems.add(newer ? Code::newerFormat : Code::badValue, "hither_plan", format->kind == Kind::number ? format->text.substr(0, 60) : word(format->kind), "1");
        if (newer) problems.list.back().facts["format"] = format->text.substr(0, 60);
    }
    if (problems.list.empty()) {
        Plan plan = PlanReader(context, problems).read(*json.value);
        if (problems.list.empty()) problems.list = planProblems(plan, problems.most);
        if (problems.list.empty()) result.plan = std::move(plan);
    }
    result.problems = named(std::move(problems.list), context.file);
    return result;
}

PlanRead planFromJsonFile(const std::string& path, PlanJsonContext context) {
    context.file = path;
    const FileBytes file = readWholeFile(path, JsonBounds{}.bytes);
    if (!file.bytes) {
        PlanRead result;
        result.problems.push_back(*file.fault);
        return result;
    }
    return planFromJson(*file.bytes, context);
}

}  // namespace hither
