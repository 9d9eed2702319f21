#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/drawing/drawing.h"
#include "core/units/result.h"

namespace crosstick::measures {

/// What its points are in a file: one place, a line (also the anchors of a sign, in the order the help names), a ring.
enum class Shape { Point, Line, Area, Text };
enum class Group { Movement, Points, Lines, Areas, Tasks, Terrain, Support, Units, Words };

/// Which drawing function engraves it (symbols/signs.cc has the table). Several measures share one.
enum class Sign {
    ActionBox,
    Square,
    Coordination,
    Star,
    Post,
    Target,
    Critical,
    KeyTerrain,
    Waypoint,
    Viewpoint,
    RangeRing,
    Ford,
    Bridge,
    Ferry,
    SlopeArrows,
    Halt,
    NamedLine,
    Boundary,
    ContactLine,
    FrontLine,
    Teeth,
    DangerLine,
    Lane,
    Way,
    Attack,
    MainAttack,
    Movement,
    Axis,
    MainAxis,
    Avenue,
    Corridor,
    Ambush,
    Area,
    BattlePosition,
    KeyTerrainArea,
    DangerArea,
    Hatched,
    CrossHatched,
    NoGo,
    SupportByFire,
    AttackByFire,
    Block,
    Breach,
    Canalize,
    Bypass,
    Clear,
    Disrupt,
    Fix,
    Destroy,
    Neutralize,
    Interdict,
    Secure,
    Occupy,
    Retain,
    Isolate,
    Security,
    Withdraw,
    TaskWords,
    Unit,
    FreeArrow,
    Words,
    BoxedWords,
    OrderOfMarch
};

/// How sure we are that the code is the standard's: all are from memory, see trade.md's list of what could not be read.
enum class Confidence { High, Medium, Low };

/// A standard's code as export metadata, never as identity (MIL-STD-2525D symbol set 25; from memory).
struct Code {
    std::string_view entity;  ///< six digits, empty where none is known
    Confidence confidence = Confidence::Low;
};

enum class FieldType { Text, Unit, Echelon, Phase, Azimuth, Millimetres, Metres, Percent, Side, Answer, UnitWords };
struct Field {
    std::string_view key;    ///< in files: "left_unit"
    std::string_view label;  ///< on screen: "Left unit"
    FieldType type = FieldType::Text;
    std::string_view standard;  ///< default value
};

/// When a line is dashed.
enum class Dashed { WhenPlanned, Always, Never };
/// Does the film's legend have to explain it?
enum class Legend { Standard, Explain };
/// What a measure of ours is drawn in: the pen of its side, or the colour that the trade keeps for a matter whoever's
/// it is (green for obstacles, yellow for contamination), or blue for what our own force may do on the ground, as red
/// is for what the enemy's may.
enum class Colour { OfItsSide, Obstacle, Contamination, OfItsForce };
/// What its label says.
enum class Wording {
    Name,           ///< "PL FLINT", "OP 3": abbreviation, then number and name
    OverPhaseLine,  ///< "LD" over "(PL FLINT)"
    Bare            ///< number and name alone; the sign says what it is
};
/// What a new one is called until somebody names it: the next free number, the next free letter, or nothing.
enum class Naming { Number, Letter, None };
/// What its points are places of.
enum class Lies { OnTheGround, OnThePaper };
/// How many points a measure needs and may have.
struct PointCount {
    int least = 1;
    std::optional<int> most;
};

/// What one kind of measure is. Adding one: a row in one of the catalogue's files, and where no sign fits a drawing
/// function in symbols/ with its row in symbols/signs.cc.
struct Entry {
    std::string_view kind;          ///< identity in files and code: "phase-line"
    std::string_view name;          ///< "Phase line"
    std::string_view abbreviation;  ///< "PL"; empty where there is none
    Group group;
    Shape shape;
    PointCount points;
    Sign sign;
    Code code;
    std::string_view help;  ///< one line
    Dashed dashed = Dashed::WhenPlanned;
    Legend legend = Legend::Standard;
    Colour colour = Colour::OfItsSide;
    Wording wording = Wording::Name;
    Naming naming = Naming::Letter;
    Lies lies = Lies::OnTheGround;
    std::span<const Field> fields = {};

    // A row says only what is not usual.
    [[nodiscard]] constexpr Entry explained() const {
        Entry next = *this;
        next.legend = Legend::Explain;
        return next;
    }
    [[nodiscard]] constexpr Entry drawn(Dashed when) const {
        Entry next = *this;
        next.dashed = when;
        return next;
    }
    [[nodiscard]] constexpr Entry in(Colour own) const {
        Entry next = *this;
        next.colour = own;
        return next;
    }
    [[nodiscard]] constexpr Entry worded(Wording how) const {
        Entry next = *this;
        next.wording = how;
        return next;
    }
    [[nodiscard]] constexpr Entry named(Naming how) const {
        Entry next = *this;
        next.naming = how;
        return next;
    }
    [[nodiscard]] constexpr Entry onPaper() const {
        Entry next = *this;
        next.lies = Lies::OnThePaper;
        return next;
    }
    [[nodiscard]] constexpr Entry with(std::span<const Field> own) const {
        Entry next = *this;
        next.fields = own;
        return next;
    }
};

/// All kinds, in the order lists show them.
[[nodiscard]] std::span<const Entry> catalogue();
/// Nothing for a kind this version does not know (from a newer program): such a measure is kept and shown as words.
[[nodiscard]] const Entry* find(std::string_view kind);
/// Is it a line on the ground that a march reports, stops or is seen at when it crosses it?
[[nodiscard]] bool isCrossedOnTheMarch(const Entry& entry);
/// Is a typed text what a field takes? Empty always is: the default holds then.
/// Errors: measures/bad-number with "low", "high"; measures/bad-side; measures/bad-echelon; measures/bad-answer.
[[nodiscard]] Result<void> checkField(const Field& field, std::string_view typed);
/// "Points", as a list of the tray has it.
[[nodiscard]] std::string_view nameOf(Group group);

}  // namespace crosstick::measures
