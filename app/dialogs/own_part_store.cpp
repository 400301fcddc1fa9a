#include "app/dialogs/own_part_store.h"

#include <algorithm>
#include <filesystem>
#include <optional>

#include <QCoreApplication>

#include <nlohmann/json.hpp>

#include "app/shipped/shipped.h"
#include "app/words/storage_words.h"
#include "core/catalogue/json_text.h"
#include "core/storage/plan_save.h"

namespace hither {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

QString tr(const char* text) { return QCoreApplication::translate("hither::OwnParts", text); }

std::vector<fs::path> ownFiles() {
    std::vector<fs::path> files;
    std::error_code error;
    const fs::path folder = ownPartsFolder();
    if (folder.empty()) return files;
    for (fs::directory_iterator entry(folder, error); !error && entry != fs::directory_iterator(); entry.increment(error))
        if (entry->path().extension() == ".json") files.push_back(entry->path());
    std::sort(files.begin(), files.end());
    return files;
}

/// Where a part stands: its file, what the file holds, and its place in it when it is a list.
struct Found { fs::path file; json all; std::size_t at = 0; };
std::optional<Found> findOwn(const std::string& id) {
    for (const fs::path& file : ownFiles()) {
        const JsonRead read = readJsonFile(file);
        if (!read.json) continue;
        const auto is = [&](const json& part) { return part.is_object() && part.value("id", json()) == id; };
        if (read.json->is_array()) {
            for (std::size_t i = 0; i < read.json->size(); ++i) if (is((*read.json)[i])) return Found{file, *read.json, i};
        } else if (is(*read.json)) {
            return Found{file, *read.json, 0};
        }
    }
    return std::nullopt;
}

QString write(const json& value, const fs::path& file) {
    const std::vector<StorageError> problems = saveText(value.dump(2) + "\n", file.string(), true);
    return problems.empty() ? QString() : QString::fromStdString(sentence(problems.front()));
}

QString deleteFile(const fs::path& file) {
    std::error_code error;
    fs::remove(file, error);
    return error ? tr("%1 could not be deleted: %2").arg(QString::fromStdString(file.string()), QString::fromStdString(error.message())) : QString();
}

}  // namespace

OwnPartsNotice& OwnPartsNotice::get() {
    static OwnPartsNotice notice;
    return notice;
}

OwnParts readOwnParts() {
    OwnParts own;
    for (const fs::path& file : ownFiles()) {
        const JsonRead read = readJsonFile(file);
        if (!read.json) {
            own.unread.push_back(file.string() + ": " + read.problem);
            continue;
        }
        const json list = read.json->is_array() ? *read.json : json::array({*read.json});
        for (const json& one : list) {
            PartRead part = readPart(one, file.string());
            if (part.part) own.parts.push_back(std::move(*part.part));
            else own.unread.push_back(describe(part.problems.front()));
        }
    }
    return own;
}

std::string ownPartId(const QString& name, const Catalogue& catalogue) {
    std::string base;
    for (const QChar c : name.toLower().normalized(QString::NormalizationForm_KD)) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (plain) base += c.toLatin1();
        else if (!base.empty() && base.back() != '-' && c.category() != QChar::Mark_NonSpacing) base += '-';
        if (base.size() >= 56) break;
    }
    while (!base.empty() && base.back() == '-') base.pop_back();
    if (base.empty()) base = "my-part";
    const OwnParts own = readOwnParts();
    const auto taken = [&](const std::string& id) {
        return catalogue.find(id) || std::any_of(own.parts.begin(), own.parts.end(), [&](const Part& p) { return p.id == id; });
    };
    if (!taken(base)) return base;
    for (int n = 2;; ++n) if (const std::string id = base + "-" + std::to_string(n); !taken(id)) return id;
}

QString saveOwnPart(const Part& part, const std::string& replacing, const Catalogue& catalogue) {
    const fs::path folder = ownPartsFolder();
    if (folder.empty()) return tr("There is no folder for your own parts: neither HOME nor HITHER_PARTS is set.");
    const json form = writePart(part);
    if (const PartRead again = readPart(form, "the part"); !again.part) return QString::fromStdString(describe(again.problems.front()));
    if (part.id != replacing && (catalogue.find(part.id) || findOwn(part.id)))
        return tr("There is a part “%1” already; choose another short name.").arg(QString::fromStdString(part.id));

    std::error_code error;
    fs::create_directories(folder, error);
    if (error) return tr("%1 could not be made: %2").arg(QString::fromStdString(folder.string()), QString::fromStdString(error.message()));
    const std::optional<Found> old = replacing.empty() ? std::nullopt : findOwn(replacing);
    if (!replacing.empty() && !old) return tr("Your own part “%1” is no longer there.").arg(QString::fromStdString(replacing));
    QString why;
    if (old && (old->all.is_array() || part.id == replacing)) {
        json all = old->all;
        if (all.is_array()) all[old->at] = form;
        else all = form;
        why = write(all, old->file);
    } else {
        const fs::path file = folder / (part.id + ".json");
        if (fs::exists(file, error)) return tr("There is a file %1 already; choose another short name.").arg(QString::fromStdString(file.string()));
        why = write(form, file);
        if (why.isEmpty() && old) why = deleteFile(old->file);
    }
    if (why.isEmpty()) emit OwnPartsNotice::get().ownPartsChanged();
    return why;
}

QString removeOwnPart(const std::string& id) {
    const std::optional<Found> old = findOwn(id);
    if (!old) return tr("Your own part “%1” is no longer there.").arg(QString::fromStdString(id));
    QString why;
    if (old->all.is_array() && old->all.size() > 1) {
        json all = old->all;
        all.erase(old->at);
        why = write(all, old->file);
    } else {
        why = deleteFile(old->file);
    }
    if (why.isEmpty()) emit OwnPartsNotice::get().ownPartsChanged();
    return why;
}

}  // namespace hither
