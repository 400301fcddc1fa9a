#include "core/checks/subjects.h"

namespace hither {

std::string spoken(SegmentId id) {
    std::string name;
    switch (id.segment) {
        case Segment::pelvis: name = "hips"; break;
        case Segment::trunk: name = "trunk"; break;
        case Segment::neck: name = "neck"; break;
        case Segment::head: name = "head"; break;
        case Segment::upperArm: name = "upper arm"; break;
        case Segment::forearm: name = "forearm"; break;
        case Segment::hand: name = "hand"; break;
        case Segment::thigh: name = "thigh"; break;
        case Segment::shank: name = "lower leg"; break;
        case Segment::foot: name = "foot"; break;
    }
    if (id.side == Side::left) return "left " + name;
    if (id.side == Side::right) return "right " + name;
    return name;
}

Subject mountSubject(const SetupMount& mount) {
    Subject s;
    s.kind = Subject::Kind::mount;
    s.id = mount.mount.id;
    s.name = mount.mount.name.empty() ? mount.mount.id : mount.mount.name;
    return s;
}

Subject partSubject(const SetupMount& mount, int part) {
    Subject s;
    s.kind = Subject::Kind::part;
    s.id = mount.mount.id;
    s.part = part;
    const auto& parts = mount.chain.parts;
    if (part >= 0 && part < static_cast<int>(parts.size())) {
        s.piece = parts[static_cast<std::size_t>(part)]->id;
        s.name = parts[static_cast<std::size_t>(part)]->name;
    }
    return s;
}

Subject bodySubject(SegmentId segment) {
    Subject s;
    s.kind = Subject::Kind::body;
    s.id = word(segment);
    s.name = spoken(segment);
    return s;
}

Subject supportSubject(const Support& support, const std::string& solid) {
    Subject s;
    s.kind = Subject::Kind::support;
    s.id = support.id;
    s.piece = solid;
    s.name = solid;
    for (char& c : s.name) if (c == '_') c = ' ';
    return s;
}

Subject attachmentSubject(const Support& support, const Attachment& attachment) {
    Subject s;
    s.kind = Subject::Kind::support;
    s.id = support.id;
    s.piece = attachment.id;
    s.name = attachment.name.empty() ? attachment.id : attachment.name;
    return s;
}

Subject keepOutSubject(const KeepOut& keepOut) {
    Subject s;
    s.kind = Subject::Kind::keepOut;
    s.id = keepOut.id;
    s.name = keepOut.name.empty() ? keepOut.id : keepOut.name;
    return s;
}

Subject siteSubject(const Site& site) {
    Subject s;
    s.kind = Subject::Kind::site;
    s.id = site.id;
    s.name = site.name.empty() ? site.id : site.name;
    return s;
}

std::string identity(const Subject& subject) {
    switch (subject.kind) {
        case Subject::Kind::mount: return subject.id;
        case Subject::Kind::part: return subject.id + "/" + std::to_string(subject.part);
        case Subject::Kind::body: return "body/" + subject.id;
        case Subject::Kind::support: return subject.id + "/" + subject.piece;
        case Subject::Kind::keepOut: return "keep_out/" + subject.id;
        case Subject::Kind::site: return "site/" + subject.id;
    }
    return subject.id;
}

std::string findingId(const std::string& what, const std::vector<Subject>& subjects) {
    std::string id = what + ":";
    for (std::size_t i = 0; i < subjects.size(); ++i) id += (i ? "~" : "") + identity(subjects[i]);
    return id;
}

Finding makeFinding(CheckKind check, const std::string& what, std::vector<Subject> subjects) {
    Finding f;
    f.check = check;
    f.key = what;
    f.id = findingId(what, subjects);
    f.subjects = std::move(subjects);
    static const char* const names[] = {"a", "b", "c"};
    for (std::size_t i = 0; i < f.subjects.size() && i < 3; ++i) f.words[names[i]] = f.subjects[i].name;
    return f;
}

}  // namespace hither
