#pragma once
#include <optional>
#include <vector>

#include <QDialog>

#include "core/storage/autosave.h"

namespace hither {

class RecoveryCard;

/// Plans that were not saved when the program ended: for each what it is and what to do with it. What
/// is neither continued with nor discarded is kept, and offered at the next start.
class RecoveryDialog : public QDialog {
    Q_OBJECT

public:
    explicit RecoveryDialog(const std::vector<Leftover>& leftovers, QWidget* parent = nullptr);
    /// Which of them to continue with; nothing: none of them now.
    std::optional<std::size_t> continueWith() const { return continueWith_; }
    /// Those that the person discarded for good, whatever else was chosen.
    std::vector<std::size_t> discarded() const;

private:
    std::vector<RecoveryCard*> cards_;
    std::optional<std::size_t> continueWith_;
};

}  // namespace hither
