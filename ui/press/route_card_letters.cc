#include "ui/press/route_card_letters.h"

#include <cmath>
#include <numbers>

#include "core/drawing/text_ruler.h"

namespace crosstick::press {
namespace {

constexpr std::string_view kCut = "…";

/// Bytes of the first letter.
std::size_t letterLength(std::string_view text) {
    std::size_t length = 1;
    while (length < text.size() && (static_cast<unsigned char>(text[length]) & 0xc0U) == 0x80U) {
        ++length;
    }
    return length;
}

/// As many letters from the front as fit, at least one.
std::size_t fittingLength(std::string_view text, double width, Hand hand) {
    std::size_t end = letterLength(text);
    while (end < text.size()) {
        const std::size_t next = end + letterLength(text.substr(end));
        if (widthOf(text.substr(0, next), hand) > width) {
            break;
        }
        end = next;
    }
    return end;
}

std::string trimmed(std::string_view text) {
    while (!text.empty() && text.back() == ' ') {
        text.remove_suffix(1);
    }
    return std::string(text);
}

/// Line ends and tabs in what people typed are blanks on a card.
std::string oneRow(std::string text) {
    for (char& letter : text) {
        if (static_cast<unsigned char>(letter) < 0x20) {
            letter = ' ';
        }
    }
    return text;
}

/// Where the next row ends: at the last blank that fits, else between letters.
std::size_t rowEnd(std::string_view rest, double width, Hand hand) {
    if (widthOf(rest, hand) <= width) {
        return rest.size();
    }
    const std::size_t fits = fittingLength(rest, width, hand);
    if (fits < rest.size() && rest[fits] == ' ') {
        return fits;
    }
    const auto blank = rest.substr(0, fits).find_last_of(' ');
    return blank == std::string_view::npos || blank == 0 ? fits : blank;
}

}  // namespace

double widthOf(std::string_view text, Hand hand) {
    return drawing::textWidth(text, hand.capHeight, hand.weight);
}

std::string fitted(const std::string& text, double width, Hand hand) {
    std::string plain = oneRow(text);
    if (plain.empty() || widthOf(plain, hand) <= width) {
        return plain;
    }
    const std::size_t fits = fittingLength(plain, width - widthOf(kCut, hand), hand);
    return trimmed(std::string_view(plain).substr(0, fits)) + std::string(kCut);
}

std::vector<std::string> wrapped(const std::string& text, double width, Hand hand, std::size_t most) {
    const std::string plain = oneRow(text);
    std::string_view rest = plain;
    std::vector<std::string> rows;
    while (!rest.empty()) {
        if (rows.size() + 1 == most) {
            rows.push_back(fitted(std::string(rest), width, hand));
            break;
        }
        const std::size_t end = rowEnd(rest, width, hand);
        rows.push_back(trimmed(rest.substr(0, end)));
        rest.remove_prefix(end);
        while (!rest.empty() && rest.front() == ' ') {
            rest.remove_prefix(1);
        }
    }
    return rows;
}

std::vector<std::string> packed(const std::vector<std::string>& parts, double width, Hand hand) {
    std::vector<std::string> rows;
    for (const std::string& part : parts) {
        if (!rows.empty() && widthOf(rows.back() + ", " + part, hand) <= width) {
            rows.back() += ", " + part;
            continue;
        }
        if (!rows.empty()) {
            rows.back() += ',';
        }
        for (std::string& row : wrapped(part, width - widthOf(",", hand), hand, 3)) {
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

std::vector<std::string> atCommas(std::string_view text) {
    std::vector<std::string> parts;
    for (auto comma = text.find(", "); comma != std::string_view::npos; comma = text.find(", ")) {
        parts.emplace_back(text.substr(0, comma));
        text.remove_prefix(comma + 2);
    }
    parts.emplace_back(text);
    return parts;
}

void CardPen::write(const std::string& text, drawing::Point at, Hand hand, Align align) {
    if (text.empty()) {
        return;
    }
    const double width = widthOf(text, hand);
    const double back = align == Align::Right ? width : align == Align::Middle ? width / 2 : 0;
    drawing::Text mark;
    mark.text = text;
    mark.start = {at.x - back, at.y};
    mark.capHeight = hand.capHeight;
    mark.weight = hand.weight;
    drawing_.marks.emplace_back(std::move(mark));
}

void CardPen::writeWithin(const std::string& text, drawing::Point at, double width, Hand hand, Align align) {
    constexpr double kSmallest = 1.6;
    while (hand.capHeight > kSmallest && widthOf(text, hand) > width) {
        hand.capHeight = std::max(kSmallest, hand.capHeight - 0.2);
    }
    write(fitted(text, width, hand), at, hand, align);
}

void CardPen::line(drawing::Point from, drawing::Point to, double width) {
    drawing::Stroke stroke;
    stroke.pieces = {{{from, to}, false}};
    stroke.width = width;
    drawing_.marks.emplace_back(std::move(stroke));
}

void CardPen::block(const drawing::Box& box) {
    drawing::Fill fill;
    fill.rings = {{{box.left, box.top}, {box.right, box.top}, {box.right, box.bottom}, {box.left, box.bottom}}};
    drawing_.marks.emplace_back(std::move(fill));
}

void CardPen::dot(drawing::Point middle, double diameter) {
    constexpr int kCorners = 24;
    drawing::Fill fill;
    fill.rings.emplace_back();
    for (int n = 0; n < kCorners; ++n) {
        const double angle = 2 * std::numbers::pi * n / kCorners;
        fill.rings.back().push_back(
            {middle.x + diameter / 2 * std::cos(angle), middle.y + diameter / 2 * std::sin(angle)});
    }
    drawing_.marks.emplace_back(std::move(fill));
}

}  // namespace crosstick::press
