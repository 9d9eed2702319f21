#include "symbols/specimen/samples.h"

#include <array>
#include <cmath>
#include <numbers>

#include "symbols/signs.h"

namespace crosstick::symbols {
namespace {

using measures::Sign;

constexpr std::array kWoods{"HAZEL", "ROWAN", "PINE", "IVY", "OAK", "THORN", "HEATH", "FERN", "MOSS", "REED", "SEDGE"};
constexpr std::array kStones{"FLINT", "AGATE", "CHERT", "SLATE", "OPAL", "BASALT"};

/// Always the same name for the same kind, and neighbours unlike each other.
template <std::size_t N>
std::string pick(const std::array<const char*, N>& names, std::string_view kind) {
    std::size_t sum = 0;
    for (const char letter : kind) {
        sum = sum * 31 + static_cast<unsigned char>(letter);
    }
    return names[sum % N];
}

void nameIt(Exhibit& exhibit, const measures::Entry& entry) {
    if (entry.sign == Sign::TaskWords) {
        exhibit.name = "OBJ PINE";
    } else if (entry.shape == measures::Shape::Text) {
        exhibit.name = "GUIDE MEETS US HERE";
    } else if (entry.naming == measures::Naming::Number) {
        exhibit.number = "3";
    } else if (entry.naming == measures::Naming::Letter) {
        exhibit.name = entry.shape == measures::Shape::Line ? pick(kStones, entry.kind) : pick(kWoods, entry.kind);
    }
}

/// Where the anchors of a constructed sign lie in a room of w by h.
std::vector<drawing::Point> anchorsOf(Sign sign, double w, double h) {
    switch (sign) {
        case Sign::Viewpoint:
            return {{w * 0.3, h * 0.75}, {w * 0.5, 3}, {w - 10, h * 0.8}};
        case Sign::Ford:
        case Sign::Bridge:
        case Sign::Ferry:
            return {{w / 2 - 4, h / 2 - 2}, {w / 2 + 4, h / 2 + 2}};
        case Sign::SlopeArrows:
            return {{w / 2, h / 2}, {w / 2 + 4, h / 2 - 6}};
        case Sign::Halt:
            return {{w / 2, h / 2 + 2}, {w / 2 + 10, h / 2 + 1}};
        case Sign::SupportByFire:
            return {{w / 2 - 8, h - 8}, {w / 2 + 8, h - 8}, {w / 2 - 16, 5}, {w / 2 + 16, 5}};
        case Sign::AttackByFire:
            return {{w / 2 - 9, h - 8}, {w / 2 + 9, h - 8}, {w / 2 + 3, 5}};
        case Sign::Ambush:
            return {{w / 2 - 6, 5}, {w / 2 - 6, h - 5}, {w - 8, h / 2}};
        case Sign::Disrupt:
            return {{w * 0.35, 5}, {w * 0.35, h - 5}, {w - 8, 5}};
        case Sign::Fix:
            return {{w - 8, h / 2}, {8, h / 2}};
        case Sign::Destroy:
        case Sign::Neutralize:
        case Sign::Interdict:
            return {{w / 2, h / 2}, {w / 2 + 16, h / 2 - 12}};
        case Sign::Secure:
        case Sign::Occupy:
        case Sign::Retain:
        case Sign::Isolate:
            return {{w / 2, h / 2}, {w / 2 + 12.5, h / 2}};
        case Sign::Security:
            return {{w / 2, h / 2}, {6, h / 2 - 6}, {w - 6, h / 2 - 6}};
        case Sign::Withdraw:
            return {{8, h / 2 - 4}, {w - 18, h / 2 - 4}, {w - 18, h / 2 + 6}};
        default:
            return {{w - 12, 5}, {w - 12, h - 5}, {10, h / 2}};
    }
}

/// Where a sign on one spot has its spot: boxes stand on it, words begin at it, tasks in words lie beside it.
drawing::Point spotOf(const measures::Entry& entry, drawing::Point size) {
    if (entry.sign == Sign::TaskWords) {
        return {size.x - 12, size.y - 4};
    }
    if (entry.shape == measures::Shape::Text) {
        return {6, size.y / 2};
    }
    if (entry.lies == measures::Lies::OnThePaper) {
        return {4, 4};
    }
    const bool stands = entry.sign == Sign::ActionBox || entry.sign == Sign::Critical;
    return {size.x / 2, stands ? size.y - 4 : size.y / 2 + 1};
}

}  // namespace

std::vector<drawing::Point> blob(drawing::Point middle, double halfWide, double halfHigh) {
    constexpr int kPoints = 36;
    std::vector<drawing::Point> ring;
    for (int n = 0; n < kPoints; ++n) {
        const double turn = 2 * std::numbers::pi * n / kPoints;
        const double swell = 0.9 + 0.1 * std::sin(3 * turn + 0.7);
        ring.push_back(middle + drawing::Vector{halfWide * swell * std::cos(turn), halfHigh * swell * std::sin(turn)});
    }
    return ring;
}

std::vector<drawing::Point> swing(drawing::Point from, drawing::Point to, double by) {
    constexpr int kPieces = 24;
    const drawing::Vector way = to - from;
    const double length = std::hypot(way.x, way.y);
    const drawing::Vector left{way.y / length, -way.x / length};
    std::vector<drawing::Point> line;
    for (int n = 0; n <= kPieces; ++n) {
        const double part = static_cast<double>(n) / kPieces;
        line.push_back(from + way * part + left * (by * std::sin(2 * std::numbers::pi * part)));
    }
    return line;
}

plan::Force marching() {
    struct Row {
        const char* unit;
        const char* name;
        const char* role;
        int people;
    };
    static constexpr std::array kRows{Row{"1/2 inf sqd", "1 Sqd", "POINT", 9}, Row{"hq 2/B inf plt", "HQ", "HQ", 3},
                                      Row{"2/2 inf sqd", "2 Sqd", "", 9}, Row{"3/2 inf sqd", "3 Sqd", "REAR", 9}};
    plan::Force force;
    plan::Column column;
    column.id = namedUuid(Uuid{{0x5e}}, "column");
    for (const Row& row : kRows) {
        const Uuid id = namedUuid(Uuid{{0x5e}}, row.name);
        force.elements.push_back({id, row.unit, row.name, "", row.people});
        column.serials.push_back({id, row.role, std::nullopt});
    }
    force.columns.push_back(std::move(column));
    return force;
}

drawing::Point sampleSize(const measures::Entry& entry) {
    switch (ruleOf(entry.sign).body) {
        case Body::Line:
            return {97, 17};
        case Body::Ring:
            return {48.5, 27};
        case Body::Anchors:
            return {64, 32};
        case Body::Spot:
            break;
    }
    if (entry.sign == Sign::RangeRing) {
        return {48.5, 40};
    }
    if (entry.sign == Sign::OrderOfMarch) {
        return {75, 84};
    }
    return entry.sign == Sign::TaskWords || entry.shape == measures::Shape::Text ? drawing::Point{64, 20}
                                                                                 : drawing::Point{48.5, 20};
}

Exhibit sample(const measures::Entry& entry, drawing::Point size) {
    constexpr double kForNames = 20;  // left free at both ends of a line
    Exhibit exhibit;
    exhibit.kind = entry.kind;
    nameIt(exhibit, entry);
    switch (ruleOf(entry.sign).body) {
        case Body::Spot:
            exhibit.points = {spotOf(entry, size)};
            break;
        case Body::Line:
            exhibit.points = swing({kForNames, size.y / 2 + 1}, {size.x - kForNames, size.y / 2 - 1}, 2);
            break;
        case Body::Ring:
            exhibit.points = blob({size.x / 2, size.y / 2}, 17, 10.5);
            break;
        case Body::Anchors:
            exhibit.points = anchorsOf(entry.sign, size.x, size.y);
            break;
    }
    if (entry.sign == Sign::Boundary) {
        exhibit.fields = {
            {"left_unit", "1/2"}, {"right_unit", "2/2"}, {"left_echelon", "sqd"}, {"right_echelon", "sqd"}};
    } else if (entry.sign == Sign::Unit) {
        exhibit.fields = {{"unit", "1/2 inf sqd"}};
    } else if (entry.sign == Sign::SlopeArrows) {
        exhibit.fields = {{"slope", "12"}};
    } else if (entry.sign == Sign::RangeRing) {
        exhibit.fields = {{"radius", "400"}};
    }
    return exhibit;
}

}  // namespace crosstick::symbols
