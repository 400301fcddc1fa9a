#pragma once
#include <string>

#include <QString>

#include "app/widgets/number_words.h"
#include "core/catalogue/part.h"

namespace hither {

/// How one figure of a part is called, what it is a number of, and how somebody finds it out.
struct FigureWords {
    QString name;      ///< "Mass", "Elbow: moment it holds when locked"; the unit where the field shows none
    QString measure;   ///< one sentence
    NumberOf of = NumberOf::ratio;
};

/// `place` as figuresOf() has it. An unknown place gives its own name.
FigureWords figureWords(const Part& part, const std::string& place);

}  // namespace hither
