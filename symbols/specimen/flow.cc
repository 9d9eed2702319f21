#include "symbols/specimen/flow.h"

#include <algorithm>

#include "core/drawing/text_ruler.h"

namespace crosstick::symbols {
namespace {

constexpr drawing::Box kFrame{8, 8, kSpecimenPaper.right - 8, kSpecimenPaper.bottom - 8};
constexpr drawing::Box kInside{16, 26, kFrame.right - 8, kFrame.bottom - 10};
constexpr double kThin = 0.25;
constexpr double kCaption = 1.8;
constexpr double kCaptionPitch = 3.0;
constexpr double kUnderRoom = 2.4;  // to the first caption's middle
constexpr double kBetweenRows = 4;
constexpr double kHeadingHigh = 8;

drawing::Stroke thin(std::vector<drawing::Polyline> pieces, drawing::Ink ink = drawing::Ink::Black) {
    return {std::move(pieces), kThin, ink, drawing::Join::Miter, drawing::Cap::Butt};
}

/// 100 true millimetres, to check a print by.
void addBar(drawing::Drawing& page) {
    const double y = kFrame.bottom - 4;
    std::vector<drawing::Polyline> pieces{{{{16, y}, {116, y}}, false}};
    for (int n = 0; n <= 10; ++n) {
        const double x = 16 + 10.0 * n;
        pieces.push_back({{{x, y}, {x, y - (n % 5 == 0 ? 2.5 : 1.2)}}, false});
    }
    page.marks.emplace_back(thin(std::move(pieces)));
}

}  // namespace

Flow::Flow(std::string title) : title_(std::move(title)) {
    beginPage();
}

void Flow::write(const std::string& text, drawing::Point left, double capital, drawing::Weight weight) {
    page().marks.emplace_back(
        drawing::Text{text, {left.x, left.y + capital / 2}, Degrees(0), capital, weight, drawing::Ink::Black});
}

void Flow::beginPage() {
    pages_.push_back({title_, {}});
    page().marks.emplace_back(thin({{{{kFrame.left, kFrame.top},
                                      {kFrame.right, kFrame.top},
                                      {kFrame.right, kFrame.bottom},
                                      {kFrame.left, kFrame.bottom}},
                                     true}}));
    write(title_, {16, 16}, 3.0, drawing::Weight::Bold);
    constexpr const char* kNote = "DRAFTING RULES ARE OUR OWN. CODES ARE FROM MEMORY: CHECK THEM BEFORE EXCHANGE.";
    write(kNote, {kFrame.right - 8 - drawing::textWidth(kNote, kCaption), 16}, kCaption, drawing::Weight::Regular);
    addBar(page());
    write("100 mm. INVENTED NAMES.", {119, kFrame.bottom - 5}, kCaption, drawing::Weight::Regular);
    at_ = {kInside.left, kInside.top};
    rowHigh_ = 0;
}

void Flow::endRow() {
    if (rowHigh_ > 0) {
        at_ = {kInside.left, at_.y + rowHigh_ + kBetweenRows};
        rowHigh_ = 0;
    }
}

void Flow::need(double high) {
    if (at_.y + high > kInside.bottom) {
        beginPage();
    }
}

void Flow::heading(const std::string& text) {
    constexpr double kLeastRow = 30;
    endRow();
    need(kHeadingHigh + kLeastRow);
    write(text, {at_.x, at_.y + 1.5}, 2.5, drawing::Weight::Bold);
    at_.y += kHeadingHigh;
}

drawing::Box Flow::room(drawing::Vector size, const std::vector<std::string>& captions) {
    const double high =
        size.y + kUnderRoom + kCaptionPitch * static_cast<double>(std::max<std::size_t>(captions.size(), 1)) - 1;
    if (at_.x + size.x > kInside.right + 0.01) {
        endRow();
    }
    if (at_.x == kInside.left) {
        need(high);
    }
    const drawing::Box room{at_.x, at_.y, at_.x + size.x, at_.y + size.y};
    for (std::size_t n = 0; n < captions.size(); ++n) {
        write(captions[n], {room.left, room.bottom + kUnderRoom + kCaptionPitch * static_cast<double>(n)}, kCaption,
              drawing::Weight::Regular);
    }
    at_.x += size.x;
    rowHigh_ = std::max(rowHigh_, high);
    return room;
}

void Flow::cross(drawing::Point p) {
    page().marks.emplace_back(
        thin({{{{p.x - 3, p.y}, {p.x + 3, p.y}}, false}, {{{p.x, p.y}, {p.x, p.y + 3}}, false}}, drawing::Ink::Red));
}

}  // namespace crosstick::symbols
