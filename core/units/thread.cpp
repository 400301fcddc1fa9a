#include "core/units/thread.h"

#include <algorithm>
#include <cmath>

#include "core/units/quantity.h"
#include "core/units/thread_table.h"
#include "core/units/tokens.h"

namespace hither {

double Thread::pitchDiameter_m() const { return majorDiameter_m - 0.649519 * pitch_m; }
double Thread::internalMinorDiameter_m() const { return majorDiameter_m - 1.082532 * pitch_m; }

double Thread::stressArea_m2() const {
    const double d = majorDiameter_m - (metric ? 0.938194 : 0.9743) * pitch_m;
    return pi / 4 * d * d;
}

// A tooth is half a pitch wide on the pitch cylinder and widens by 2 tan 30 deg = 2 * 0.57735 / 2 per
// unit of diameter toward its root. The stud's teeth shear where the socket's crests end (D1), the
// socket's where the stud's crests end (D); there are engaged / P of them around.
double Thread::externalShearArea_m2(double engaged_m) const {
    const double atMinor = internalMinorDiameter_m();
    const double width = pitch_m / 2 + 0.57735 * (pitchDiameter_m() - atMinor);
    return pi * atMinor * width * std::max(0.0, engaged_m) / pitch_m;
}
double Thread::internalShearArea_m2(double engaged_m) const {
    const double width = pitch_m / 2 + 0.57735 * (majorDiameter_m - pitchDiameter_m());
    return pi * majorDiameter_m * width * std::max(0.0, engaged_m) / pitch_m;
}

const std::vector<Thread>& knownThreads() {
    static const std::vector<Thread> threads = [] {
        std::vector<Thread> usual;
        for (const ThreadRow& row : threadTable()) if (row.usual) usual.push_back(threadOf(row));
        return usual;
    }();
    return threads;
}

namespace {

using Kind = Token::Kind;
using Result = Parsed<Thread>;

bool isNumber(const std::vector<Token>& t, std::size_t i) { return i < t.size() && t[i].kind == Kind::number; }
bool isWord(const std::vector<Token>& t, std::size_t i, const char* word) { return i < t.size() && t[i].kind == Kind::word && t[i].text == word; }

/// "M5", "M5 x 0.8" from after the M.
Result readMetric(const std::vector<Token>& t, std::size_t at) {
    if (!isNumber(t, at)) return Result::refused("there is no diameter after the M");
    const double diameter = t[at].value;
    const std::string size = t[at].text;
    ++at;
    std::optional<double> pitch;
    if (at < t.size() && (t[at].kind == Kind::times || isWord(t, at, "x"))) {
        if (!isNumber(t, at + 1)) return Result::refused("there is no pitch after the x");
        pitch = t[at + 1].value;
        at += 2;
    }
    if (at < t.size()) return Result::refused(quoted(t[at].text) + " is left over after the thread");
    for (const ThreadRow& row : threadTable()) {
        if (std::string(row.series) != "M" || row.diameter != diameter) continue;
        if (pitch && std::abs(*pitch - row.pitch) > 1e-9) return Result::refused("only the coarse pitch of M" + size + " is known here");
        return Result::of(threadOf(row));
    }
    return Result::refused("M" + size + " is not among the metric coarse threads known here");
}

/// "1/4-20", "#6-32", "1/4 in - 20" at `at`; the series is checked by the caller.
struct InchSize { std::string size; double perInch = 0; };
Parsed<InchSize> readInch(const std::vector<Token>& t, std::size_t& at) {
    using R = Parsed<InchSize>;
    InchSize read;
    bool numbered = false;
    if (at < t.size() && (t[at].kind == Kind::hash || isWord(t, at, "no"))) { numbered = true; ++at; }
    if (at < t.size() && t[at].kind == Kind::fraction && !numbered) {
        read.size = t[at++].text;
    } else if (isNumber(t, at) && t[at].whole) {
        read.size = t[at++].text;
        if (!numbered && at < t.size() && t[at].kind == Kind::slash) {
            if (!isNumber(t, at + 1)) return R::refused("the fraction has no lower number");
            read.size += "/" + t[at + 1].text;
            at += 2;
        }
    } else {
        return R::refused("there is no thread size; write for example 1/4-20, #6-32 or M5");
    }
    if (isWord(t, at, "\"") || isWord(t, at, "in") || isWord(t, at, "inch")) ++at;
    if (at >= t.size() || t[at].kind != Kind::minus) return R::refused("the threads per inch are missing; write for example 1/4-20");
    ++at;
    if (!isNumber(t, at) || !t[at].whole) return R::refused("there is no whole number of threads per inch after the hyphen");
    read.perInch = t[at++].value;
    return R::of(read);
}

}  // namespace

Parsed<Thread> parseThread(std::string_view text) {
    const auto scanned = tokenize(text);
    if (!scanned) return Result::refused(scanned.reason);
    const std::vector<Token>& t = *scanned.value;
    if (t.empty()) return Result::refused("nothing was typed");
    for (const Token& token : t)
        if (token.kind == Kind::word && (token.text == "bsw" || token.text == "bsf" || token.text == "whitworth" || token.text == "w"))
            return Result::refused("Whitworth threads have another angle (55 degrees) and are not known here");
    std::size_t at = 0;
    if (isWord(t, 0, "m")) return readMetric(t, 1);
    std::string series;
    const auto takeSeries = [&] {
        if (series.empty() && at < t.size() && t[at].kind == Kind::word && (t[at].text == "unc" || t[at].text == "unf" || t[at].text == "uns"))
            series = t[at++].text == "unc" ? "UNC" : t[at - 1].text == "unf" ? "UNF" : "UNS";
    };
    takeSeries();
    const auto read = readInch(t, at);
    if (!read) return Result::refused(read.reason);
    takeSeries();
    if (at < t.size()) return Result::refused(quoted(t[at].text) + " is left over after the thread");
    const std::string shown = read.value->size + "-" + std::to_string(static_cast<long long>(std::min(read.value->perInch, 1e6)));
    for (const ThreadRow& row : threadTable()) {
        if (std::string(row.series) == "M" || row.size != read.value->size || row.pitch != read.value->perInch) continue;
        if (!series.empty() && series != row.series) return Result::refused(quoted(shown) + " is " + row.series + ", not " + series);
        return Result::of(threadOf(row));
    }
    return Result::refused(quoted(shown) + " is not among the threads known here");
}

}  // namespace hither
