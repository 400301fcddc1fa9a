#pragma once
#include <string>

namespace hither {

/// One thing in the scene or the setup tree that a person can pick.
struct Picked {
    enum class Kind { nothing, support, attachment, person, site, mount, part, outlet, joint, keepOut };
    Kind kind = Kind::nothing;
    std::string id;      ///< of the support, site, mount or keep-out; empty for the person
    std::string piece;   ///< attachment id; body segment word; joint (element) name; support solid name
    int part = -1;       ///< part, outlet, joint: number of the part in the mount

    bool nothing() const { return kind == Kind::nothing; }
    bool operator==(const Picked&) const = default;

    static Picked support(std::string id, std::string solid = {}) { return {Kind::support, std::move(id), std::move(solid), -1}; }
    static Picked attachment(std::string support, std::string attachment) { return {Kind::attachment, std::move(support), std::move(attachment), -1}; }
    static Picked person(std::string segment = {}) { return {Kind::person, {}, std::move(segment), -1}; }
    static Picked site(std::string id) { return {Kind::site, std::move(id), {}, -1}; }
    static Picked mount(std::string id) { return {Kind::mount, std::move(id), {}, -1}; }
    static Picked partOf(std::string mount, int part) { return {Kind::part, std::move(mount), {}, part}; }
    static Picked outletOf(std::string mount, int part) { return {Kind::outlet, std::move(mount), {}, part}; }
    static Picked jointOf(std::string mount, int part, std::string joint) { return {Kind::joint, std::move(mount), std::move(joint), part}; }
    static Picked keepOut(std::string id) { return {Kind::keepOut, std::move(id), {}, -1}; }
};

}  // namespace hither
