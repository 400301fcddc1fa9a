#pragma once
#include <string>
#include <vector>

#include <QObject>
#include <QString>

#include "core/catalogue/catalogue.h"

namespace hither {

/// Says when the person's own parts have changed on the disk: the catalogue is read anew then.
class OwnPartsNotice : public QObject {
    Q_OBJECT

public:
    static OwnPartsNotice& get();

signals:
    void ownPartsChanged();
};

/// The person's own parts: JSON files in ownPartsFolder(), each one part or a list of parts.
struct OwnParts {
    std::vector<Part> parts;           ///< by file, then in the file's order
    std::vector<std::string> unread;   ///< a line for each file or part that cannot be read
};
OwnParts readOwnParts();

/// A free id made of a name: "gooseneck-600-mm". Never one that the catalogue or an own part has.
std::string ownPartId(const QString& name, const Catalogue& catalogue);

/// Writes a part; `replacing` is the id of the own part that it takes the place of, empty for a new one.
/// Never writes over another part or a file of another name. Empty when written, otherwise why not.
QString saveOwnPart(const Part& part, const std::string& replacing, const Catalogue& catalogue);
/// Empty when it is gone, otherwise why not.
QString removeOwnPart(const std::string& id);

}  // namespace hither
