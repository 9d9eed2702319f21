#include "symbols/token.h"

#include <algorithm>

#include "symbols/manner.h"
#include "symbols/signs.h"

namespace crosstick::symbols {
namespace {

/// Where its points lie in a room from 0, 0: a line along it, a ring round it, a spot in its middle, or anchors far
/// enough from each other for their sign.
Points tokenPoints(const measures::Entry& entry, Body body, Vector size) {
    using measures::Sign;
    switch (body) {
        case Body::Spot:
            return {{size.x / 2, size.y / 2}};
        case Body::Line:
            return {{0, size.y / 2}, {size.x, size.y / 2}};
        case Body::Ring:
            return {{0.2, 0.2}, {size.x - 0.2, 0.2}, {size.x - 0.2, size.y - 0.2}, {0.2, size.y - 0.2}};
        case Body::Anchors:
            break;
    }
    Points anchors{{4, 4}, {28, 4}, {16, 24}, {28, 24}};
    if (entry.sign == Sign::Viewpoint) {
        anchors = {{16, 24}, {6, 6}, {26, 6}};
    } else if (entry.sign == Sign::Withdraw) {
        anchors = {{4, 8}, {24, 8}, {24, 16}};
    } else if (entry.points.least == 2) {
        anchors = {{16, 16}, {28, 7}};
    }
    anchors.resize(static_cast<std::size_t>(entry.points.least));
    return anchors;
}

/// Ink made small enough for a room and laid into its middle; pens stay as they are.
drawing::Drawing fitted(drawing::Drawing ink, const drawing::Box& room, double pen) {
    const drawing::Box box = drawing::extent(ink);
    const double k = std::min({1.0, (room.width() - pen) / std::max(box.width() - pen, 1e-6),
                               (room.height() - pen) / std::max(box.height() - pen, 1e-6)});
    const Point middle = box.middle();
    const auto moved = [&](Point& p) { p = room.middle() + (p - middle) * k; };
    for (drawing::Mark& mark : ink.marks) {
        if (auto* stroke = std::get_if<drawing::Stroke>(&mark)) {
            for (drawing::Polyline& piece : stroke->pieces) {
                std::for_each(piece.points.begin(), piece.points.end(), moved);
            }
        } else if (auto* fill = std::get_if<drawing::Fill>(&mark)) {
            for (auto& ring : fill->rings) {
                std::for_each(ring.begin(), ring.end(), moved);
            }
        } else if (auto* text = std::get_if<drawing::Text>(&mark)) {
            moved(text->start);
            text->capHeight *= k;
        }
    }
    return ink;
}

}  // namespace

drawing::Drawing token(const plan::Measure& shown, const measures::Entry& entry, const Engraving& engraving,
                       const drawing::Box& room, TokenLetters letters) {
    const SignRule& rule = ruleOf(entry.sign);
    const bool isLettered = letters == TokenLetters::OfSymbols && rule.body == Body::Spot;
    plan::Measure measure;
    measure.kind = shown.kind;
    measure.whose = shown.whose;
    measure.fields = shown.fields;
    if (isLettered) {
        measure.name = shown.name;
        measure.number = shown.number;
    }
    const plan::Showing showing{measure.id, {}, {}, {}};
    // A sign on a spot looks for room; all others would leave gaps for letters that a token does not have.
    Desk desk(engraving, {-200, -200, 200, 200}, rule.body == Body::Spot ? Desk::Room::Ample : Desk::Room::None);
    Subject subject;
    subject.order = 1;
    subject.measure = &measure;
    subject.showing = &showing;
    subject.points = tokenPoints(entry, rule.body, {room.width(), room.height()});
    subject.manner = mannerOf(measure, Place::ByItself, engraving);
    rule.place(desk, subject);
    if (isLettered) {
        subject.ink.append(std::move(subject.letters));
    }
    return fitted(std::move(subject.ink), room, engraving.gauge.pen);
}

}  // namespace crosstick::symbols
