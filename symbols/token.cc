#include "symbols/token.h"

#include <algorithm>

#include "symbols/manner.h"
#include "symbols/signs.h"

namespace crosstick::symbols {
namespace {

constexpr double kFlat = 8;  ///< a legend's sample

/// Anchors of the signs that are small enough to be drawn to size in a flat room; none for the others.
Points flatAnchors(measures::Sign sign, Vector size) {
    using measures::Sign;
    constexpr double kEdge = 0.3;
    const double w = size.x;
    const double h = size.y;
    switch (sign) {
        case Sign::Ford:
        case Sign::Bridge:
        case Sign::Ferry:
        case Sign::Halt:
            return {{w / 2, h / 2}, {w, h / 2}};
        case Sign::Viewpoint:
            return {{2, h / 2}, {w - 1, kEdge}, {w - 1, h - kEdge}};
        case Sign::Ambush:
            return {{3.2, kEdge}, {3.2, h - kEdge}, {w - kEdge, h / 2}};
        case Sign::SupportByFire:
            return {{5, h - 1}, {w - 5, h - 1}, {1, kEdge}, {w - 1, kEdge}};
        case Sign::AttackByFire:
            return {{w / 2 - 2.5, h - 1}, {w / 2 + 2.5, h - 1}, {w / 2, kEdge}};
        case Sign::Block:
        case Sign::Clear:
            return {{20, 0}, {20, 8.5}, {0, 4.25}};
        case Sign::Breach:
        case Sign::Canalize:
        case Sign::Bypass:
            return {{0, 0}, {16, 0}, {8, 4.2}};
        case Sign::Disrupt:
            return {{8, 0}, {8, 8.5}, {24, 0}};
        case Sign::Fix:
            return {{26, 0}, {0, 0}};
        case Sign::Destroy:
        case Sign::Neutralize:
        case Sign::Interdict:
            return {{0, 0}, {12, -4.5}};
        case Sign::Secure:
        case Sign::Occupy:
        case Sign::Retain:
        case Sign::Isolate:
            return {{0, 0}, {6.5, 0}};
        case Sign::Security:
            return {{0, 0}, {-22, 0}, {22, 0}};
        case Sign::Withdraw:
            return {{0, 0}, {18, 0}, {18, 5}};
        default:
            return {};
    }
}

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
    if (size.y < kFlat) {
        if (const Points anchors = flatAnchors(entry.sign, size); !anchors.empty()) {
            return anchors;
        }
    }
    Points anchors{{4, 4}, {28, 4}, {16, 24}, {28, 24}};
    if (entry.sign == Sign::Viewpoint) {
        anchors = {{16, 24}, {6, 6}, {26, 6}};
    } else if (entry.sign == Sign::Security) {
        anchors = {{22, 14}, {0, 8}, {44, 8}};
    } else if (entry.sign == Sign::Disrupt) {
        anchors = {{10, 4}, {10, 20}, {32, 4}};
    } else if (entry.sign == Sign::Fix) {
        anchors = {{32, 8}, {2, 8}};
    } else if (entry.sign == Sign::Withdraw) {
        anchors = {{4, 8}, {24, 8}, {24, 16}};
    } else if (entry.points.least == 2) {
        anchors = {{16, 16}, {28, 7}};
    }
    anchors.resize(static_cast<std::size_t>(entry.points.least));
    return anchors;
}

/// How much smaller ink must become to lie in a room; 1 where it does.
double shareThatFits(const drawing::Box& ink, const drawing::Box& room, double pen) {
    return std::min({1.0, (room.width() - pen) / std::max(ink.width() - pen, 1e-6),
                     (room.height() - pen) / std::max(ink.height() - pen, 1e-6)});
}

/// Ink made small enough for a room and laid into its middle; pens stay as they are.
drawing::Drawing fitted(drawing::Drawing ink, const drawing::Box& room, double pen) {
    const drawing::Box box = drawing::extent(ink);
    const double k = shareThatFits(box, room, pen);
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

/// How a token is drawn: what of the measure, with which letters, by which gauge.
struct Order {
    const plan::Measure& measure;
    const measures::Entry& entry;
    TokenLetters letters;
};

/// Letters that lie in the symbol itself: in a legend those beside it are said by the text.
void keepInside(drawing::Drawing& letters, const TurnedBox& symbol) {
    std::erase_if(letters.marks, [&](const drawing::Mark& mark) {
        const auto* text = std::get_if<drawing::Text>(&mark);
        return text != nullptr && !symbol.bounds().contains(text->start);
    });
}

/// A task whose sign is told from others by the letter in it.
bool hasTaskLetter(const Order& order) {
    return order.entry.group == measures::Group::Tasks && ruleOf(order.entry.sign).body == Body::Anchors;
}

drawing::Drawing drawn(const Order& order, const Engraving& engraving, Vector size, double taskLetter = kTaskLetter) {
    const SignRule& rule = ruleOf(order.entry.sign);
    const plan::Showing showing{order.measure.id, {}, {}, {}};
    // What keeps its letters looks for room; all others would leave gaps for letters that a token does not have.
    const bool isLettered = rule.body == Body::Spot || (order.letters == TokenLetters::OfKind && hasTaskLetter(order));
    Desk desk(engraving, {-200, -200, 200, 200}, isLettered ? Desk::Room::Ample : Desk::Room::None, taskLetter);
    Subject subject;
    subject.order = 1;
    subject.measure = &order.measure;
    subject.showing = &showing;
    subject.points = tokenPoints(order.entry, rule.body, size);
    subject.manner = mannerOf(order.measure, Place::ByItself, engraving);
    rule.place(desk, subject);
    if (rule.body == Body::Spot && order.letters == TokenLetters::OfKind && !subject.parts.empty()) {
        keepInside(subject.letters, subject.parts.front().box);
    }
    if (isLettered) {
        subject.ink.append(std::move(subject.letters));
    }
    return std::move(subject.ink);
}

Engraving withSymbols(const Engraving& engraving, double height) {
    Engraving smaller{.plan = engraving.plan,
                      .film = engraving.film,
                      .frame = engraving.frame,
                      .gauge = engraving.gauge,
                      .pens = engraving.pens,
                      .surface = engraving.surface,
                      .reserved = {},
                      .figures = {},
                      .angles = engraving.angles};
    smaller.gauge.symbol = height;
    return smaller;
}

void dropLetters(drawing::Drawing& ink) {
    std::erase_if(ink.marks, [](const drawing::Mark& mark) { return std::holds_alternative<drawing::Text>(mark); });
}

/// A symbol of a legend as large as its room allows, its letters as high as letters must be.
drawing::Drawing legendSymbol(const Order& order, const Engraving& engraving, const drawing::Box& room) {
    constexpr double kLeast = 1.6;
    constexpr double kStep = 0.1;
    for (double height = engraving.gauge.symbol; height >= kLeast; height -= kStep) {
        drawing::Drawing ink = drawn(order, withSymbols(engraving, height), {room.width(), room.height()});
        const drawing::Box box = drawing::extent(ink);
        if (box.width() <= room.width() && box.height() <= room.height()) {
            return fitted(std::move(ink), room, engraving.gauge.pen);
        }
    }
    drawing::Drawing ink = drawn(order, engraving, {room.width(), room.height()});
    dropLetters(ink);
    return fitted(std::move(ink), room, engraving.gauge.pen);
}

/// A task's sign as small as its room asks, the letter in it as high as letters must be at least.
drawing::Drawing legendTask(const Order& order, const Engraving& engraving, const drawing::Box& room) {
    constexpr double kLeast = 1.8;
    constexpr int kMostTries = 8;  // a higher letter may make the whole wider, and that smaller again
    double capital = kTaskLetter;
    for (int n = 0; n < kMostTries; ++n) {
        drawing::Drawing ink = drawn(order, engraving, {room.width(), room.height()}, capital);
        const double share = shareThatFits(drawing::extent(ink), room, engraving.gauge.pen);
        if (capital * share >= kLeast) {
            return fitted(std::move(ink), room, engraving.gauge.pen);
        }
        capital = (kLeast + 0.02) / share;
    }
    drawing::Drawing ink = drawn(order, engraving, {room.width(), room.height()});
    dropLetters(ink);
    return fitted(std::move(ink), room, engraving.gauge.pen);
}

}  // namespace

drawing::Drawing token(const plan::Measure& shown, const measures::Entry& entry, const Engraving& engraving,
                       const drawing::Box& room, TokenLetters letters) {
    plan::Measure measure;
    measure.kind = shown.kind;
    measure.whose = shown.whose;
    measure.fields = shown.fields;
    for (const measures::Field& field : entry.fields) {
        if (field.type == measures::FieldType::Percent) {
            measure.fields.try_emplace(std::string(field.key), "14");  // as steep as it can be told
        }
    }
    const Order order{measure, entry, letters};
    if (letters == TokenLetters::OfKind) {
        for (const measures::Field& field : entry.fields) {
            if (field.type == measures::FieldType::Millimetres) {
                measure.fields[std::string(field.key)] = "3.4";  // the least: a sample is small
            }
        }
        if (ruleOf(entry.sign).body == Body::Spot) {
            return legendSymbol(order, engraving, room);
        }
        if (hasTaskLetter(order)) {
            return legendTask(order, engraving, room);
        }
    } else if (ruleOf(entry.sign).body == Body::Spot) {
        measure.name = shown.name;
        measure.number = shown.number;
    }
    return fitted(drawn(order, engraving, {room.width(), room.height()}), room, engraving.gauge.pen);
}

}  // namespace crosstick::symbols
