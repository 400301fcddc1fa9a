#include "app/document/recent_plans.h"

#include <algorithm>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "app/words/storage_words.h"
#include "core/storage/fresh.h"
#include "core/storage/plan_save.h"

namespace hither {

std::vector<RecentPlan> RecentPlans::read() const {
    std::vector<RecentPlan> out;
    QFile file(file_);
    if (file_.isEmpty() || !file.open(QIODevice::ReadOnly) || file.size() > 1 << 20) return out;
    for (const QJsonValue& value : QJsonDocument::fromJson(file.readAll()).object().value("plans").toArray()) {
        const QJsonObject o = value.toObject();
        RecentPlan plan{o.value("path").toString(), o.value("title").toString(), o.value("opened_utc").toString(), true};
        if (plan.path.isEmpty() || out.size() >= most) continue;
        plan.there = QFileInfo(plan.path).isFile();
        out.push_back(std::move(plan));
    }
    return out;
}

QString RecentPlans::add(const QString& given, const QString& title, const QString& now_utc) const {
    if (file_.isEmpty()) return {};
    const QString path = QFileInfo(given).absoluteFilePath();
    std::vector<RecentPlan> plans = read();
    plans.erase(std::remove_if(plans.begin(), plans.end(), [&](const RecentPlan& p) { return p.path == path; }), plans.end());
    plans.insert(plans.begin(), {path, title, now_utc.isEmpty() ? QString::fromStdString(utcNow()) : now_utc, true});
    if (plans.size() > most) plans.resize(most);
    return write(plans);
}

QString RecentPlans::remove(const QString& path) const {
    std::vector<RecentPlan> plans = read();
    plans.erase(std::remove_if(plans.begin(), plans.end(), [&](const RecentPlan& p) { return p.path == path; }), plans.end());
    return write(plans);
}

QString RecentPlans::write(const std::vector<RecentPlan>& plans) const {
    QDir().mkpath(QFileInfo(file_).absolutePath());
    QJsonArray list;
    for (const RecentPlan& p : plans) list.append(QJsonObject{{"path", p.path}, {"title", p.title}, {"opened_utc", p.opened_utc}});
    const std::string text = QJsonDocument(QJsonObject{{"plans", list}}).toJson().toStdString();
    const std::vector<StorageError> problems = saveText(text, QFile::encodeName(file_).toStdString());
    return problems.empty() ? QString() : QString::fromStdString(sentence(problems.front()));
}

}  // namespace hither
