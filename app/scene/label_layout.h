#pragma once
#include <map>
#include <string>
#include <vector>

#include <QPointF>
#include <QRectF>
#include <QSizeF>

namespace hither {

/// A label that wants a place: the point it speaks of and its size, in pixels of the view.
struct LabelWish {
    std::string key;
    QPointF at;
    QSizeF size;
    int rank = 0;       ///< 0 first; the last rank may be left out when there is no room
    bool optional = false;
};
struct LabelPlace { std::size_t wish = 0; QRectF box; };

/// Places labels beside their points so that none covers another or leaves the view; optional ones
/// that find no room are left out. A label keeps to the side that it was on last time where it can,
/// so that labels do not jump about while the view turns.
class LabelLayout {
public:
    std::vector<LabelPlace> place(const std::vector<LabelWish>& wishes, QSizeF view);

private:
    std::map<std::string, int> sides_;
};

}  // namespace hither
