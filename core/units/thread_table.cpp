#include "core/units/thread_table.h"

#include <string>

namespace hither {

const std::vector<ThreadRow>& threadTable() {
    static const std::vector<ThreadRow> rows{
        {"UNC", "2", 0.086, 56, false},   {"UNC", "4", 0.112, 40, true},    {"UNC", "5", 0.125, 40, false},
        {"UNC", "6", 0.138, 32, true},    {"UNC", "8", 0.164, 32, false},   {"UNC", "10", 0.190, 24, false},
        {"UNC", "1/4", 0.25, 20, true},   {"UNC", "5/16", 0.3125, 18, false},{"UNC", "3/8", 0.375, 16, true},
        {"UNC", "1/2", 0.5, 13, false},   {"UNC", "5/8", 0.625, 11, false},
        {"UNF", "10", 0.190, 32, false},  {"UNF", "1/4", 0.25, 28, false},  {"UNF", "5/16", 0.3125, 24, false},
        {"UNF", "3/8", 0.375, 24, false},
        {"UNS", "5/8", 0.625, 27, true},
        {"M", "2", 2, 0.4, false},        {"M", "2.5", 2.5, 0.45, false},   {"M", "3", 3, 0.5, true},
        {"M", "4", 4, 0.7, true},         {"M", "5", 5, 0.8, true},         {"M", "6", 6, 1.0, true},
        {"M", "8", 8, 1.25, true},        {"M", "10", 10, 1.5, false},      {"M", "12", 12, 1.75, false},
    };
    return rows;
}

Thread threadOf(const ThreadRow& row) {
    const std::string series = row.series;
    if (series == "M") return {series + row.size, row.diameter * 1e-3, row.pitch * 1e-3, true};
    return {series + " " + row.size + "-" + std::to_string(static_cast<int>(row.pitch)), row.diameter * 0.0254, 0.0254 / row.pitch, false};
}

}  // namespace hither
