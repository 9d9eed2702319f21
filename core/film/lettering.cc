#include "core/film/lettering.h"

#include "core/drawing/text_ruler.h"

namespace crosstick::film {

drawing::Text row(std::string text, drawing::Point at, double capHeight, Align align, drawing::Weight weight) {
    const double width = drawing::textWidth(text, capHeight, weight);
    if (align != Align::Left) {
        at.x -= align == Align::Middle ? width / 2 : width;
    }
    drawing::Text letters;
    letters.text = std::move(text);
    letters.start = at;
    letters.capHeight = capHeight;
    letters.weight = weight;
    return letters;
}

std::vector<std::string> wrapped(std::string_view text, double width, double capHeight) {
    std::vector<std::string> rows;
    std::string current;
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (word.empty()) {
            continue;
        }
        const std::string longer = current.empty() ? std::string(word) : current + ' ' + std::string(word);
        if (current.empty() || drawing::textWidth(longer, capHeight) <= width) {
            current = longer;
        } else {
            rows.push_back(std::move(current));
            current = word;
        }
    }
    if (!current.empty()) {
        rows.push_back(std::move(current));
    }
    return rows;
}

drawing::Stroke lines(std::vector<drawing::Polyline> pieces, double pen) {
    drawing::Stroke stroke;
    stroke.pieces = std::move(pieces);
    stroke.width = pen;
    return stroke;
}

drawing::Polyline outline(const drawing::Box& box) {
    return {{{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}}, true};
}

}  // namespace crosstick::film
