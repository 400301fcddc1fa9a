#pragma once
#include <QLineEdit>

namespace hither {

/// A line of words. Commits on Enter or on leaving, Esc brings the last words back; a refresh leaves what
/// is being typed.
class TextField : public QLineEdit {
    Q_OBJECT

public:
    explicit TextField(QWidget* parent = nullptr);
    /// Shows words; nothing is signalled.
    void setWords(const QString& words);
    const QString& words() const { return words_; }

signals:
    void committed(const QString& words);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void commit();
    QString words_;
};

}  // namespace hither
