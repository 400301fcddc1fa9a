#pragma once
#include <functional>
#include <string>
#include <vector>

#include "core/plan/plan.h"
#include "core/storage/storage_error.h"

namespace hither {

/// The steps of a save, each named after what has just been done. If the program ends after
///   built        nothing has been touched on the disk;
///   made         an empty file of another name lies beside the plan;
///   written      that file may be whole or not; nobody looks at it;
///   synced       it is whole and on the disk;
///   verified     it has been read back from the disk and is the plan, value by value;
///   linked       the plan's present file has a second name, under a name that nobody looks at;
///   backedUp     that name has become the .bak, in one step; the file is still the plan's file too;
///   replaced     the new file has taken the plan's name, in one step: plan new, .bak previous;
///   done         the folder is on the disk.
/// At every instant the plan's name, once it has a file, means a whole file.
enum class SaveStep { built, made, written, synced, verified, linked, backedUp, replaced, done };
const char* word(SaveStep step);

struct SaveOptions {
    bool keepBackup = true;                       ///< the previous file stays as path + ".bak"
    std::function<void(SaveStep)> after;          ///< for tests: called after each step
};

/// Writes the plan's file so that either the new file or the old one is there and whole, whatever
/// happens on the way. Empty when it is saved; otherwise the problems, and the old file is as it was
/// (or already its own .bak as well). The path must name a regular file or nothing, in a folder that
/// is there; a symbolic link is refused. Left-over files of saves that were cut short are removed.
std::vector<StorageError> savePlanFile(const Plan& plan, const std::string& path, const SaveOptions& options = {});

/// The same care for any small text (exports, notes beside autosaves): written beside, synced, replaced.
/// With `keepBackup` the previous text stays as path + ".bak".
std::vector<StorageError> saveText(const std::string& text, const std::string& path, bool keepBackup = false);

}  // namespace hither
