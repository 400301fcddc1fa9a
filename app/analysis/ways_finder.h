#pragma once
#include <atomic>
#include <memory>
#include <string>
#include <thread>

#include <QObject>

#include "app/shipped/shipped.h"
#include "core/ways/ways.h"

namespace hither {

/// Finds the ways to bring a mount's switch to its site on a thread of its own. One search at a time; a
/// new one, or `cancel`, drops the one that runs.
class WaysFinder : public QObject {
    Q_OBJECT

public:
    explicit WaysFinder(std::shared_ptr<const Shipped> shipped, QObject* parent = nullptr);
    ~WaysFinder() override;

    /// `setup` is copied by reference: it is never changed. Nothing is signalled when it is cancelled, nor
    /// when the mount cannot be brought to a site (`canBringToSite`).
    void find(std::shared_ptr<const Setup> setup, const std::string& mount, const CheckLimits& limits);
    void cancel();
    bool running() const;

signals:
    void found(const std::string& mount, std::shared_ptr<const hither::Ways> ways);
    void failed(const std::string& mount, const QString& why);   ///< an error while searching
    void runningChanged();

private:
    struct Run;
    std::shared_ptr<const Shipped> shipped_;
    std::shared_ptr<Run> run_;
    quint64 searches_ = 0;
};

}  // namespace hither
