#pragma once
#include <functional>
#include <vector>

#include <QFrame>

class QHBoxLayout;
class QLabel;

namespace hither {

/// A strip across the window that tells something a person should know and offers what can be done
/// about it, without standing in the way. One notice at a time; the newest one stays.
class NoticeBar : public QFrame {
    Q_OBJECT

public:
    explicit NoticeBar(QWidget* parent = nullptr);
    struct Choice { QString words; std::function<void()> run; };
    /// Every choice puts the notice away first; "Close" does only that.
    void tell(const QString& words, const std::vector<Choice>& choices = {});
    void putAway();

private:
    QLabel* words_ = nullptr;
    QHBoxLayout* buttons_ = nullptr;
};

}  // namespace hither
