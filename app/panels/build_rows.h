#pragma once
#include <QListWidget>
#include <QStyledItemDelegate>

namespace hither {

/// One row of a list of parts, places or mounts: what it is, a line about it, and what it costs.
struct BuildRow {
    QString lead;          ///< before the title: its number; may be empty
    QString title, detail;
    QString right;         ///< price
    enum class Tone { plain, quiet, bad, heading } tone = Tone::plain;   ///< quiet: it does not fit; bad: `detail` says what is wrong
    QString spoken() const;
};

/// A list of such rows, each as high as its words need at the width there is. Headings cannot be picked.
class BuildRowList : public QListWidget {
    Q_OBJECT

public:
    explicit BuildRowList(QWidget* parent = nullptr);

    /// Shows these rows, keeping those that stay; the row picked stays picked when its key is still there.
    void show(const std::vector<std::pair<QString, BuildRow>>& keyed);
    QString keyAt(int row) const;
    QString currentKey() const { return keyAt(currentRow()); }
    int rowOf(const QString& key) const;     ///< -1: not there
    void pickKey(const QString& key);        ///< without signalling
    /// As high as all its rows, up to `most` lines of text; 0: no limit.
    void fitToRows(int most);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void chosen(const QString& key);   ///< clicked, or moved to by keys
    void entered(const QString& key);  ///< Enter or a double click

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    int rowsHeight() const;
    int most_ = -1;
    bool quiet_ = false;
};

/// Lays out and paints a `BuildRow`.
class BuildRowDelegate : public QStyledItemDelegate {
    Q_OBJECT

public:
    explicit BuildRowDelegate(QListWidget* list);
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    struct Laid;
    Laid lay(const QModelIndex& index, int width) const;
    QListWidget* list_;
};

}  // namespace hither
