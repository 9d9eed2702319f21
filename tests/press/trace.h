#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "core/drawing/drawing.h"

namespace crosstick::testing {

/// A line as it stands in a PDF's own content, read by a reader that is not ours (MuPDF), in millimetres from the upper
/// left corner of the page box.
struct TracedLine {
    std::vector<drawing::Point> points;
    double pen = 0;
};

/// A row of letters: what it says and where its base line begins.
struct TracedText {
    std::string text;
    std::string font;
    drawing::Point start;
    std::vector<double> places;  ///< of each letter along the row, millimetres from the start
};

struct TracedPage {
    double width = 0, height = 0;  ///< millimetres
    std::vector<TracedLine> lines;
    std::vector<TracedText> texts;
    int images = 0;
};

/// @param page  from 1
[[nodiscard]] TracedPage trace(const std::filesystem::path& pdf, int page);

/// What a program writes to its standard output; an empty text where it failed.
[[nodiscard]] std::string outputOf(const std::string& command);

/// True where a straight stroke runs from one point to the other (either way), each within a tolerance in millimetres.
[[nodiscard]] bool hasStroke(const TracedPage& page, drawing::Point from, drawing::Point to, double tolerance);

}  // namespace crosstick::testing
