#pragma once
#include <string>

#include <QString>

class QListWidget;

namespace hither {

/// A list to pick from, as high as its rows, up to six of them.
QListWidget* pickList(const QString& accessibleName, int rows);
/// "Set the seat width": what an edit of a number is called.
QString setLabel(const QString& what);

}  // namespace hither
