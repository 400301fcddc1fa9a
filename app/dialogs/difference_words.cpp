#include "app/dialogs/difference_words.h"

#include <cmath>
#include <map>
#include <optional>

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QStringList>

namespace hither {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("DifferenceWords", text); }
QString named(const QString& what, const std::string& name) { return what.arg(QString::fromUtf8("“%1”").arg(QString::fromStdString(name))); }

/// The thing of that id in a list of either plan.
template <class List> auto find(const List* first, const List* second, const std::string& id) -> const typename List::value_type* {
    for (const List* list : {first, second})
        if (list) for (const auto& thing : *list) if (thing.id == id) return &thing;
    return nullptr;
}
template <class Thing> std::string nameOf(const Thing* thing, const std::string& id) { return thing && !thing->name.empty() ? thing->name : id; }

enum class Unit { none, length, angle, mass, force, moment };

/// A key's unit by its ending, which goes.
Unit takeUnit(QString& key) {
    static const std::vector<std::pair<const char*, Unit>> endings = {{"_mm", Unit::length}, {"_deg", Unit::angle}, {"_g", Unit::mass}, {"_Nm", Unit::moment}, {"_N", Unit::force}};
    for (const auto& [ending, unit] : endings) {
        if (!key.endsWith(QLatin1String(ending))) continue;
        key.chop(static_cast<qsizetype>(qstrlen(ending)));
        return unit;
    }
    return Unit::none;
}

QString number(double value, Unit unit, UnitSystem units) {
    const int digits = std::abs(value - std::round(value)) < 1e-6 ? 0 : 1;
    switch (unit) {
        case Unit::length: return QString::fromStdString(printLength(value / 1000, units, digits));
        case Unit::angle: return QString::fromStdString(printAngle(radians(value), digits));
        case Unit::mass: return QString::fromStdString(printMass(value / 1000, units));
        case Unit::force: return QString::fromStdString(printForce(value, units, units == UnitSystem::metric ? digits : 1));
        case Unit::moment: return QString::fromStdString(printMoment(value, units));
        case Unit::none: break;
    }
    return QString::number(value, 'g', 6);
}

QString valueWords(const QJsonValue& value, Unit unit, UnitSystem units) {
    switch (value.type()) {
        case QJsonValue::Bool: return value.toBool() ? tr("yes") : tr("no");
        case QJsonValue::Double: return number(value.toDouble(), unit, units);
        case QJsonValue::String: return value.toString().isEmpty() ? tr("nothing") : QString::fromUtf8("“%1”").arg(value.toString().simplified());
        case QJsonValue::Array: {
            QStringList all;
            for (const QJsonValue& one : value.toArray()) all << valueWords(one, unit, units);
            return all.join(", ");
        }
        case QJsonValue::Object: {
            const QJsonObject o = value.toObject();
            if (o.contains("value")) return valueWords(o.value("value"), unit, units);
            if (o.contains("name")) return valueWords(o.value("name"), unit, units);
            QStringList all;
            for (auto it = o.begin(); it != o.end() && all.size() < 8; ++it) {
                QString key = it.key();
                const Unit own = takeUnit(key);
                all << key.replace('_', ' ') + ' ' + valueWords(it.value(), own == Unit::none ? unit : own, units);
            }
            return all.join(", ");
        }
        case QJsonValue::Null: return tr("unknown");
        case QJsonValue::Undefined: break;
    }
    return {};
}

/// `text` as the difference has it: JSON, or its beginning.
QString valueWords(const std::string& text, Unit unit, UnitSystem units) {
    if (text.empty()) return {};
    const QJsonDocument json = QJsonDocument::fromJson(QByteArray("[") + QByteArray::fromStdString(text) + "]");
    return json.isArray() ? valueWords(json.array().at(0), unit, units) : QString::fromStdString(text).simplified();
}

/// What a list holds, one and many; %1 the name.
struct Collection { const char* one; const char* many; };
const std::map<QString, Collection>& collections() {
    static const std::map<QString, Collection> all = {
        {"options", {QT_TRANSLATE_NOOP("DifferenceWords", "option %1"), QT_TRANSLATE_NOOP("DifferenceWords", "options")}},
        {"mounts", {QT_TRANSLATE_NOOP("DifferenceWords", "mount %1"), QT_TRANSLATE_NOOP("DifferenceWords", "mounts")}},
        {"parts", {QT_TRANSLATE_NOOP("DifferenceWords", "figures of part %1"), QT_TRANSLATE_NOOP("DifferenceWords", "parts")}},
        {"keep_outs", {QT_TRANSLATE_NOOP("DifferenceWords", "space to keep free %1"), QT_TRANSLATE_NOOP("DifferenceWords", "spaces to keep free")}},
        {"supports", {QT_TRANSLATE_NOOP("DifferenceWords", "support %1"), QT_TRANSLATE_NOOP("DifferenceWords", "supports")}},
        {"sites", {QT_TRANSLATE_NOOP("DifferenceWords", "site %1"), QT_TRANSLATE_NOOP("DifferenceWords", "sites")}},
        {"extra_items", {QT_TRANSLATE_NOOP("DifferenceWords", "extra item %1"), QT_TRANSLATE_NOOP("DifferenceWords", "extra items")}},
        {"accepted", {QT_TRANSLATE_NOOP("DifferenceWords", "accepted finding %1"), QT_TRANSLATE_NOOP("DifferenceWords", "accepted findings")}},
        {"history", {QT_TRANSLATE_NOOP("DifferenceWords", "save %1"), QT_TRANSLATE_NOOP("DifferenceWords", "saves")}},
        {"rails", {QT_TRANSLATE_NOOP("DifferenceWords", "rail %1"), QT_TRANSLATE_NOOP("DifferenceWords", "rails")}},
        {"edges", {QT_TRANSLATE_NOOP("DifferenceWords", "edge %1"), QT_TRANSLATE_NOOP("DifferenceWords", "edges")}},
        {"faces", {QT_TRANSLATE_NOOP("DifferenceWords", "face %1"), QT_TRANSLATE_NOOP("DifferenceWords", "faces")}},
        {"cloths", {QT_TRANSLATE_NOOP("DifferenceWords", "cloth %1"), QT_TRANSLATE_NOOP("DifferenceWords", "cloths")}},
        {"landmarks", {QT_TRANSLATE_NOOP("DifferenceWords", "landmark %1"), QT_TRANSLATE_NOOP("DifferenceWords", "landmarks")}},
        {"groups", {QT_TRANSLATE_NOOP("DifferenceWords", "moving section %1"), QT_TRANSLATE_NOOP("DifferenceWords", "moving sections")}},
    };
    return all;
}

/// Keys that say more in other words.
const std::map<QString, const char*>& keyWords() {
    static const std::map<QString, const char*> all = {
        {"shows", QT_TRANSLATE_NOOP("DifferenceWords", "what it is for")},
        {"fixed_to", QT_TRANSLATE_NOOP("DifferenceWords", "where it is fixed")},
        {"limits", QT_TRANSLATE_NOOP("DifferenceWords", "limits of the checks")},
        {"around", QT_TRANSLATE_NOOP("DifferenceWords", "turn round the rail")},
        {"along", QT_TRANSLATE_NOOP("DifferenceWords", "place along it")},
        {"display", QT_TRANSLATE_NOOP("DifferenceWords", "units shown")},
        {"swing", QT_TRANSLATE_NOOP("DifferenceWords", "swing")},
        {"kept", QT_TRANSLATE_NOOP("DifferenceWords", "kept where it is")},
        {"clocking", QT_TRANSLATE_NOOP("DifferenceWords", "turn against the part before it")},
        {"clocking_kept", QT_TRANSLATE_NOOP("DifferenceWords", "turn against the part before it kept")},
        {"reversed", QT_TRANSLATE_NOOP("DifferenceWords", "turned end for end")},
        {"curvature_per_m", QT_TRANSLATE_NOOP("DifferenceWords", "bends (1/m)")},
        {"at", QT_TRANSLATE_NOOP("DifferenceWords", "where it stands")},
        {"yaw", QT_TRANSLATE_NOOP("DifferenceWords", "turn about vertical")},
    };
    return all;
}

/// Lists of plain values: their own names say enough.
bool isWrapper(const QString& token) {
    static const QStringList all = {"dimensions", "dimensions_mm", "settings", "tubes", "posture_deg", "active_ranges_deg", "body", "joints"};
    return all.contains(token);
}

/// Walks the path and calls its steps by their names.
class Where {
public:
    Where(const Plan& before, const Plan& after) : before_(before), after_(after) {}
    QStringList words;
    Unit unit = Unit::none;

    void walk(const QStringList& tokens) {
        for (qsizetype i = 0; i < tokens.size(); ++i) {
            const QString& token = tokens[i];
            const bool last = i + 1 == tokens.size();
            if (const auto found = collections().find(token); found != collections().end()) {
                if (last) words << tr(found->second.many);
                else thing(token, tr(found->second.one), tokens[++i].toStdString());
            } else if (isWrapper(token)) {
                QString key = token;
                unit = takeUnit(key);
                if (last) words << key.replace('_', ' ');
            } else {
                QString key = token;
                if (const Unit own = takeUnit(key); own != Unit::none) unit = own;
                const auto other = keyWords().find(key);
                words << (other == keyWords().end() ? key.replace('_', ' ') : tr(other->second));
            }
        }
    }

private:
    void thing(const QString& list, const QString& what, const std::string& id) {
        std::string name = id;
        if (list == "options") {
            oldOption_ = before_.option(id);
            newOption_ = after_.option(id);
            name = nameOf(newOption_ ? newOption_ : oldOption_, id);
        } else if (list == "mounts") {
            newMount_ = find<std::vector<Mount>>(newOption_ ? &newOption_->mounts : nullptr, nullptr, id);
            oldMount_ = find<std::vector<Mount>>(oldOption_ ? &oldOption_->mounts : nullptr, nullptr, id);
            name = nameOf(newMount_ ? newMount_ : oldMount_, id);
        } else if (list == "parts" && (newMount_ || oldMount_)) {
            words << partWords(QString::fromStdString(id).toInt());
            return;
        } else if (list == "parts") {
            const Part* part = after_.part(id) ? after_.part(id) : before_.part(id);
            if (part) name = part->name;
        } else if (list == "keep_outs") {
            name = nameOf(find(newOption_ ? &newOption_->keepOuts : nullptr, oldOption_ ? &oldOption_->keepOuts : nullptr, id), id);
        } else if (list == "supports") {
            name = nameOf(find(&after_.supports, &before_.supports, id), id);
        } else if (list == "sites") {
            name = nameOf(find(&after_.sites, &before_.sites, id), id);
        } else if (list == "extra_items") {
            name = nameOf(find(&after_.extraItems, &before_.extraItems, id), id);
        } else if (list == "accepted" || list == "history") {
            words << what.arg(QString::fromStdString(id).toInt() + 1);
            return;
        }
        words << named(what, name);
    }

    /// People count from one.
    QString partWords(int at) const {
        const Plan& plan = newMount_ && at < static_cast<int>(newMount_->parts.size()) ? after_ : before_;
        const Mount* mount = &plan == &after_ ? newMount_ : oldMount_;
        const Part* part = mount && at >= 0 && at < static_cast<int>(mount->parts.size()) ? plan.part(mount->parts[static_cast<std::size_t>(at)].part) : nullptr;
        return part ? tr("part %1 (%2)").arg(at + 1).arg(QString::fromStdString(part->name)) : tr("part %1").arg(at + 1);
    }

    const Plan& before_;
    const Plan& after_;
    const PlanOption* oldOption_ = nullptr;
    const PlanOption* newOption_ = nullptr;
    const Mount* oldMount_ = nullptr;
    const Mount* newMount_ = nullptr;
};

}  // namespace

bool isOfSaves(const PlanDifference& difference) {
    return difference.place == "revision" || difference.place == "changed_utc" || difference.place == "made_utc" || difference.place.rfind("history", 0) == 0;
}

QString differenceWords(const PlanDifference& difference, const Plan& before, const Plan& after, UnitSystem units) {
    Where where(before, after);
    where.walk(QString::fromStdString(difference.place).split('/', Qt::SkipEmptyParts));
    QString place = where.words.join(", ");
    if (!place.isEmpty()) place[0] = place[0].toUpper();
    const QString was = valueWords(difference.before, where.unit, units), is = valueWords(difference.after, where.unit, units);
    switch (difference.kind) {
        case PlanDifference::Kind::added: return is.isEmpty() || place.contains(is) ? tr("%1: added").arg(place) : tr("%1: added, %2").arg(place, is);
        case PlanDifference::Kind::removed: return tr("%1: taken away").arg(place);
        case PlanDifference::Kind::moved: return tr("%1: in another order").arg(place);
        case PlanDifference::Kind::changed: break;
    }
    // What reads the same differs in digits that are not shown, or in what is not.
    return was == is ? tr("%1: changed").arg(place) : tr("%1: %2 → %3").arg(place, was, is);
}

}  // namespace hither
