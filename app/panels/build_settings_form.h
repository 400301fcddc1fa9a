#pragma once
#include <memory>

#include <QWidget>

#include "app/actions/editor_context.h"
#include "app/panels/build_settings.h"

class QCheckBox;
class QLabel;
class QPushButton;
class QVBoxLayout;

namespace hither {

class BuildDial;

/// One setting in the form: its dials, whether it is locked, and the way home.
class BuildSettingBox : public QWidget {
    Q_OBJECT

public:
    /// `heading`: of the part that this setting is the first of; empty: none.
    BuildSettingBox(const EditorContext& context, const Setting& setting, const QString& heading, QWidget* parent);
    const QString& heading() const { return heading_; }
    void show(const Setting& setting, const std::string& mount, UnitSystem units);
    const Setting& setting() const { return setting_; }

private:
    void change(const Dial& dial, double value, bool preview);

    EditorContext context_;
    Setting setting_;
    QString heading_;
    std::string mount_;
    QLabel *title_, *about_;
    QCheckBox *kept_, *fromBelow_ = nullptr;
    QPushButton* home_ = nullptr;
    std::vector<BuildDial*> dials_;
};

/// Where the mount sits and how its joints stand, to be set by slider or number: of the part picked, or of
/// the whole mount when none is.
class BuildSettingsForm : public QWidget {
    Q_OBJECT

public:
    explicit BuildSettingsForm(const EditorContext& context, QWidget* parent = nullptr);
    /// Follows document and pick.
    void refresh();

signals:
    void rebuilt();   ///< other fields than before

private:
    EditorContext context_;
    QLabel *heading_, *nothing_;
    QVBoxLayout* boxes_;
    std::vector<BuildSettingBox*> shown_;
};

}  // namespace hither
