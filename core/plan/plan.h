#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/chunked_list.h"
#include "core/plan/film.h"
#include "core/plan/force.h"
#include "core/plan/measure.h"
#include "core/plan/sheet.h"

namespace crosstick::plan {

struct Phase {
    int number = 1;
    std::string name;  ///< "Approach"
    std::optional<Instant> from;
    std::optional<Instant> until;
    UnknownFields unknown = {};
    friend bool operator==(const Phase&, const Phase&) = default;
};

enum class DeclinationSource { Model, Sheet };

/// A person's pace count: how often the left foot strikes the ground in 100 m.
struct PaceProfile {
    double doublePacesPer100 = 62;
    std::string note;  ///< "open hill, night"
    UnknownFields unknown = {};
    friend bool operator==(const PaceProfile&, const PaceProfile&) = default;
};

/// A course of known length that somebody walked counting: a pace count of one's own comes from it.
struct PaceCourse {
    std::string walker;  ///< whose count: "P14"
    Metres length;
    double doublePaces = 0;
    Going going = Going::CrossCountry;
    Light light = Light::Day;
    UnknownFields unknown = {};
    friend bool operator==(const PaceCourse&, const PaceCourse&) = default;
};

/// A rate of march and where it comes from ("cross-country, night").
struct MarchRate {
    KilometresPerHour rate{4.0};
    std::string note;
    UnknownFields unknown = {};
    friend bool operator==(const MarchRate&, const MarchRate&) = default;
};

/// How the hurt are brought out: carried to the collection point, on by vehicle or from the pick-up.
struct Evacuation {
    std::optional<ItemId> collection;  ///< a measure: where casualties are collected
    std::optional<ItemId> onward;      ///< a route: the vehicle's way on from there
    std::optional<ItemId> pickUp;      ///< a measure: where they are fetched
    std::optional<MarchRate> carry;    ///< of people who carry somebody; none: no time is told
    UnknownFields unknown = {};
    friend bool operator==(const Evacuation&, const Evacuation&) = default;
};

/// Papers that were given out. Numbers on them are frozen: another number on ours would make theirs wrong.
struct Issue {
    Instant at;
    std::string papers;                ///< "films 1-2 and PHASE 2, 6 copies"
    std::vector<ItemId> numbers = {};  ///< the measures whose numbers stand on them
    UnknownFields unknown = {};
    friend bool operator==(const Issue&, const Issue&) = default;
};

/// What stands once on every paper.
struct Heading {
    std::string name;     ///< "SLOW KETTLE"
    std::string marking;  ///< "EXERCISE"
    std::string author;   ///< name, rank, unit
    std::string unit;
    std::string distribution;
    std::string cautions;
    TimeZone zone;
    CalendarDate date{};  ///< the day the work is for: declination, light
    std::optional<Instant> prepared;
    std::optional<Instant> effective;
    DeclinationSource declination = DeclinationSource::Model;
    geodesy::Zone plane;  ///< the plan's own plane: WGS 84, this UTM zone or UPS
    std::optional<PaceProfile> pace;
    std::vector<PaceCourse> courses;  ///< counts by ground and light are worked out from them
    std::optional<MarchRate> rate;
    std::optional<Timing> timing;              ///< none: times are made by the one rate
    std::optional<Instant> hHour;              ///< the time that others are told from
    std::vector<Preparation> preparations;     ///< before the start, in the order in which they are done
    std::optional<NavigatorErrors> navigator;  ///< own figures; none: our defaults
    std::optional<Evacuation> evacuation;
    std::vector<Issue> issues;            ///< the earliest first
    std::optional<drawing::Gauge> gauge;  ///< sizes of symbols, pens and letters; none: the usual ones
    UnknownFields unknown;
    friend bool operator==(const Heading&, const Heading&) = default;
};

struct Difference;

/// The document, an immutable value: copying it copies pointers. Who holds one can read it on any thread without a
/// lock. Edits are the functions of edits.h, from a plan to a new plan that shares all it did not touch.
class Plan {
  public:
    Plan() = default;
    [[nodiscard]] const Uuid& id() const { return id_; }
    [[nodiscard]] const Heading& heading() const { return *heading_; }
    [[nodiscard]] const std::vector<SheetPtr>& sheets() const { return *sheets_; }
    [[nodiscard]] const std::vector<Phase>& phases() const { return *phases_; }
    [[nodiscard]] const std::vector<FilmPtr>& films() const { return *films_; }  ///< the stack, the lowest first
    [[nodiscard]] const std::vector<RoutePtr>& routes() const { return *routes_; }
    [[nodiscard]] const ChunkedList<Measure>& measures() const { return measures_; }  ///< in order of identity
    [[nodiscard]] const std::optional<Registration>& registration() const { return *registration_; }
    [[nodiscard]] const Force& force() const { return *force_; }

    [[nodiscard]] MeasurePtr measure(const ItemId& id) const;  ///< null where there is none
    [[nodiscard]] RoutePtr route(const ItemId& id) const;
    [[nodiscard]] FilmPtr film(const FilmId& id) const;
    [[nodiscard]] FilmPtr filmNamed(std::string_view name) const;
    [[nodiscard]] RoutePtr routeNamed(std::string_view name) const;
    [[nodiscard]] SheetPtr sheet(const SheetId& id) const;
    /// The sheet a film lies on: its own, else the plan's first; null for a plan without a sheet.
    [[nodiscard]] SheetPtr groundSheet(const Film& film) const;
    /// The CRS of the ground sheet's printed grid, or of the plan's own plane where it has no sheet.
    [[nodiscard]] std::string gridCrs(const Film& film) const;
    [[nodiscard]] std::string planeCrs() const;
    /// The sizes that a film is drawn in: its own, else the plan's, else the usual ones.
    [[nodiscard]] drawing::Gauge gauge(const Film& film) const;

    friend bool operator==(const Plan& a, const Plan& b);
    friend class PlanBuilder;
    friend Difference difference(const Plan& before, const Plan& after);

  private:
    Uuid id_;
    std::shared_ptr<const Heading> heading_ = std::make_shared<const Heading>();
    std::shared_ptr<const std::vector<SheetPtr>> sheets_ = std::make_shared<const std::vector<SheetPtr>>();
    std::shared_ptr<const std::vector<Phase>> phases_ = std::make_shared<const std::vector<Phase>>();
    std::shared_ptr<const std::vector<FilmPtr>> films_ = std::make_shared<const std::vector<FilmPtr>>();
    std::shared_ptr<const std::vector<RoutePtr>> routes_ = std::make_shared<const std::vector<RoutePtr>>();
    ChunkedList<Measure> measures_;
    std::shared_ptr<const std::optional<Registration>> registration_ =
        std::make_shared<const std::optional<Registration>>();
    std::shared_ptr<const Force> force_ = std::make_shared<const Force>();
};

/// Changes several things of a plan at once and gives the new one; parts not touched are shared with the old.
class PlanBuilder {
  public:
    explicit PlanBuilder(Plan base) : plan_(std::move(base)) {}
    PlanBuilder& id(const Uuid& id);
    PlanBuilder& heading(Heading heading);
    PlanBuilder& phases(std::vector<Phase> phases);
    PlanBuilder& registration(std::optional<Registration> registration);
    PlanBuilder& force(Force force);
    PlanBuilder& put(Sheet sheet);  ///< replaces the one with the same identity, else adds at the end
    PlanBuilder& put(Film film);    ///< keeps its place in the stack; a new one goes on top
    PlanBuilder& put(Route route);
    PlanBuilder& put(Measure measure);
    PlanBuilder& put(ChunkedList<Measure> all);   ///< in place of every measure the plan has
    PlanBuilder& put(std::vector<Measure> many);  ///< one pass, for imports
    PlanBuilder& removeMeasure(const ItemId& id);
    PlanBuilder& removeRoute(const ItemId& id);
    PlanBuilder& removeFilm(const FilmId& id);
    PlanBuilder& removeSheet(const SheetId& id);
    /// Puts lists in the order of the identities given; an empty order leaves its list alone. What an order does not
    /// name keeps its turn at the end.
    PlanBuilder& order(const std::vector<Uuid>& sheets, const std::vector<Uuid>& films,
                       const std::vector<Uuid>& routes);
    [[nodiscard]] Plan build() &&;

  private:
    Plan plan_;
};

}  // namespace crosstick::plan
