#pragma once
#include <vector>

#include "core/units/thread.h"

namespace hither {

/// One standard screw size. Basic sizes: ASME B1.1 (unified inch: numbered sizes are
/// 0.060 in + 0.013 in * number) and ISO 261 (metric coarse).
struct ThreadRow {
    const char* series;   ///< "UNC", "UNF", "UNS", "M"
    const char* size;     ///< "1/4", "6", "5"
    double diameter;      ///< inch; metric: mm
    double pitch;         ///< inch: threads per inch; metric: pitch in mm
    bool usual;           ///< found on the trade's gear
};
const std::vector<ThreadRow>& threadTable();
Thread threadOf(const ThreadRow& row);

}  // namespace hither
