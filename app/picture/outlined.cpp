#include "app/picture/outlined.h"

#include <algorithm>

namespace hither {

namespace {

bool covers(const Picked& picked, const Picked& thing) {
    if (picked.nothing()) return false;
    if (picked == thing) return true;
    using Kind = Picked::Kind;
    switch (picked.kind) {
        case Kind::support: return thing.kind == Kind::support && thing.id == picked.id && picked.piece.empty();
        case Kind::person: return thing.kind == Kind::person && picked.piece.empty();
        case Kind::mount: return (thing.kind == Kind::part || thing.kind == Kind::mount) && thing.id == picked.id;
        default: return false;
    }
}

bool isSubject(const Subject& subject, const Picked& thing) {
    using Kind = Picked::Kind;
    switch (subject.kind) {
        case Subject::Kind::mount: return (thing.kind == Kind::part || thing.kind == Kind::mount) && thing.id == subject.id;
        case Subject::Kind::part: return thing.kind == Kind::part && thing.id == subject.id && thing.part == subject.part;
        case Subject::Kind::body: return thing.kind == Kind::person && thing.piece == subject.id;
        case Subject::Kind::support:
            return thing.id == subject.id && (thing.kind == Kind::support || thing.kind == Kind::attachment) && !subject.piece.empty() && thing.piece == subject.piece;
        case Subject::Kind::keepOut: return thing.kind == Kind::keepOut && thing.id == subject.id;
        case Subject::Kind::site: return thing.kind == Kind::site && thing.id == subject.id;
    }
    return false;
}

}  // namespace

bool isOutlined(const PictureWishes& wishes, const Picked& thing) {
    if (thing.nothing()) return false;
    if (covers(wishes.picked, thing)) return true;
    return wishes.finding && std::any_of(wishes.finding->subjects.begin(), wishes.finding->subjects.end(), [&](const Subject& s) { return isSubject(s, thing); });
}

}  // namespace hither
