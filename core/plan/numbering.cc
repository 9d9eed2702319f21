#include "core/plan/numbering.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>
#include <sstream>

#include "core/plan/edits.h"

namespace crosstick::plan {
namespace {

constexpr std::string_view kNumbered = "checkpoint";

bool isCheckpoint(const Plan& plan, const ItemId& item) {
    const MeasurePtr measure = plan.measure(item);
    return measure && measure->kind == kNumbered;
}

bool hasFigure(std::string_view word) {
    return std::any_of(word.begin(), word.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
}

/// "2" of "2A".
std::string figuresOf(const std::string& number) {
    const auto end = std::find_if(number.begin(), number.end(), [](unsigned char c) { return std::isdigit(c) == 0; });
    return {number.begin(), end};
}

/// Gives numbers to checkpoints that may have another one.
class Numberer {
  public:
    Numberer(const Plan& plan, const std::set<ItemId>& movable, Inserted inserted)
        : plan_(plan), movable_(movable), inserted_(inserted) {
        plan.measures().forEach([&](const MeasurePtr& measure) {
            if (measure->kind == kNumbered && !movable_.contains(measure->id)) {
                taken_.insert(measure->number);
            }
        });
    }

    [[nodiscard]] Plan numbered() {
        for (const Use use : {Use::Primary, Use::Alternate, Use::Vehicle}) {
            for (const RoutePtr& route : plan_.routes()) {
                if (route->use == use) {
                    walk(*route);
                }
            }
        }
        PlanBuilder builder(plan_);
        for (const auto& [item, number] : numbers_) {
            Measure measure = *plan_.measure(item);
            if (measure.number != number) {
                measure.number = number;
                builder.put(std::move(measure));
            }
        }
        return std::move(builder).build();
    }

  private:
    const Plan& plan_;
    const std::set<ItemId>& movable_;
    Inserted inserted_;
    std::set<std::string> taken_;
    std::map<ItemId, std::string> numbers_;

    void walk(const Route& route) {
        std::string before;  // of the last one given out
        for (std::size_t n = 0; n < route.stops.size(); ++n) {
            const ItemId& item = route.stops[n].measure;
            if (!isCheckpoint(plan_, item)) {
                continue;
            }
            if (issueOf(plan_, item) != nullptr && !movable_.contains(item)) {
                before = plan_.measure(item)->number;
            } else if (movable_.contains(item) && !numbers_.contains(item)) {
                const bool between = !figuresOf(before).empty() && isIssuedAfter(route, n);
                take(item, inserted_ == Inserted::Lettered && between ? lettered(figuresOf(before)) : nextFree());
            }
        }
    }

    [[nodiscard]] bool isIssuedAfter(const Route& route, std::size_t at) const {
        return std::any_of(route.stops.begin() + static_cast<std::ptrdiff_t>(at) + 1, route.stops.end(),
                           [&](const Stop& stop) {
                               return isCheckpoint(plan_, stop.measure) && !movable_.contains(stop.measure) &&
                                      issueOf(plan_, stop.measure) != nullptr;
                           });
    }

    void take(const ItemId& item, std::string number) {
        taken_.insert(number);
        numbers_.emplace(item, std::move(number));
    }

    [[nodiscard]] std::string nextFree() const {
        int number = 1;
        while (taken_.contains(std::to_string(number))) {
            ++number;
        }
        return std::to_string(number);
    }

    [[nodiscard]] std::string lettered(const std::string& figures) const {
        for (char letter = 'A'; letter <= 'Z'; ++letter) {
            if (!taken_.contains(figures + letter)) {
                return figures + letter;
            }
        }
        return nextFree();
    }
};

std::set<ItemId> notGivenOut(const Plan& plan, const std::vector<ItemId>& items) {
    std::set<ItemId> free;
    for (const ItemId& item : items) {
        if (issueOf(plan, item) == nullptr) {
            free.insert(item);
        }
    }
    return free;
}

bool isSameForNumbers(const Plan& a, const Plan& b) {
    return &a.routes() == &b.routes() && &a.measures().chunks() == &b.measures().chunks() &&
           &a.heading() == &b.heading();
}

}  // namespace

std::string capitals(std::string name) {
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
    return name;
}

MeasurePtr holderOf(const Plan& plan, std::string_view kind, const std::string& number, const ItemId& except) {
    MeasurePtr holder;
    plan.measures().forEach([&](const MeasurePtr& measure) {
        if (!holder && !number.empty() && measure->id != except && measure->kind == kind && measure->number == number) {
            holder = measure;
        }
    });
    return holder;
}

RoutePtr routeThrough(const Plan& plan, const ItemId& measure) {
    for (const RoutePtr& route : plan.routes()) {
        if (std::any_of(route->stops.begin(), route->stops.end(),
                        [&](const Stop& stop) { return stop.measure == measure; })) {
            return route;
        }
    }
    return nullptr;
}

std::string numberSaid(const measures::Meant& meant) {
    const std::string first = meant.label.substr(0, meant.label.find(' '));
    return meant.entry->naming == measures::Naming::Number && hasFigure(first) ? capitals(first) : std::string();
}

Called calledBy(const measures::Meant& meant, const Plan& plan) {
    const measures::Entry& entry = *meant.entry;
    if (entry.shape == measures::Shape::Text) {
        return {{}, meant.label.empty() ? std::string("TEXT") : meant.label};
    }
    Called called;
    called.number = numberSaid(meant);
    std::string rest = meant.label;
    if (!called.number.empty()) {
        rest.erase(0, std::min(rest.size(), called.number.size() + 1));
    } else if (entry.naming == measures::Naming::Number) {
        called.number = nextNumber(plan, entry.kind);
    }
    called.name = capitals(std::move(rest));
    if (called.name.empty() && entry.naming == measures::Naming::Letter) {
        called.name = nextName(plan, entry.kind);
    }
    return called;
}

Measure called(Measure measure, const measures::Meant& meant, const Plan& plan) {
    Called called = calledBy(meant, plan);
    measure.number = std::move(called.number);
    measure.name = std::move(called.name);
    if (meant.entry->naming == measures::Naming::None) {
        std::istringstream words(meant.label);
        std::string unit;
        for (const measures::Field& field : meant.entry->fields) {
            if (field.type == measures::FieldType::Unit && words >> unit) {
                measure.fields[std::string(field.key)] = unit;
                measure.name.clear();
            }
        }
    }
    return measure;
}

const Issue* issueOf(const Plan& plan, const ItemId& measure) {
    for (const Issue& issue : plan.heading().issues) {
        if (std::find(issue.numbers.begin(), issue.numbers.end(), measure) != issue.numbers.end()) {
            return &issue;
        }
    }
    return nullptr;
}

std::vector<ItemId> numbersOnPapers(const Plan& plan) {
    std::set<ItemId> items;
    const auto add = [&](const ItemId& item) {
        const MeasurePtr measure = plan.measure(item);
        if (measure && !measure->number.empty()) {
            items.insert(item);
        }
    };
    for (const FilmPtr& film : plan.films()) {
        for (const Showing& showing : film->shows) {
            add(showing.item);
        }
    }
    for (const RoutePtr& route : plan.routes()) {
        for (const Stop& stop : route->stops) {
            add(stop.measure);
        }
    }
    return {items.begin(), items.end()};
}

Plan givenOut(const Plan& plan, Issue issue) {
    Heading heading = plan.heading();
    heading.issues.push_back(std::move(issue));
    return std::move(PlanBuilder(plan).heading(std::move(heading))).build();
}

std::vector<ItemId> checkpointsAlong(const Plan& plan) {
    std::vector<ItemId> order;
    std::set<ItemId> seen;
    for (const Use use : {Use::Primary, Use::Alternate, Use::Vehicle}) {
        for (const RoutePtr& route : plan.routes()) {
            for (const Stop& stop : route->stops) {
                if (route->use == use && isCheckpoint(plan, stop.measure) && seen.insert(stop.measure).second) {
                    order.push_back(stop.measure);
                }
            }
        }
    }
    return order;
}

Plan numberedAlong(const Plan& plan, Inserted inserted) {
    return Numberer(plan, notGivenOut(plan, checkpointsAlong(plan)), inserted).numbered();
}

Plan numbersFollow(const Plan& before, const Plan& after, Inserted inserted) {
    if (isSameForNumbers(before, after)) {
        return after;
    }
    const std::vector<ItemId> was = checkpointsAlong(before);
    const std::vector<ItemId> is = checkpointsAlong(after);
    if (was == is) {
        return after;
    }
    if (numberedAlong(before, inserted) == before) {
        return numberedAlong(after, inserted);
    }
    std::vector<ItemId> fresh;
    std::copy_if(is.begin(), is.end(), std::back_inserter(fresh),
                 [&](const ItemId& item) { return !before.measure(item); });
    return Numberer(after, notGivenOut(after, fresh), inserted).numbered();
}

Renumbering renumbered(const Plan& plan) {
    const std::vector<ItemId> all = checkpointsAlong(plan);
    Renumbering done{Numberer(plan, {all.begin(), all.end()}, Inserted::NextFree).numbered(), {}, 0};
    std::set<ItemId> changed;
    for (const ItemId& item : all) {
        if (plan.measure(item)->number != done.plan.measure(item)->number) {
            changed.insert(item);
        }
    }
    done.changed = changed.size();
    Heading heading = plan.heading();
    std::erase_if(heading.issues, [&](const Issue& issue) {
        const bool wrong = std::any_of(issue.numbers.begin(), issue.numbers.end(),
                                       [&](const ItemId& item) { return changed.contains(item); });
        if (wrong) {
            done.killed.push_back(issue);
        }
        return wrong;
    });
    if (!done.killed.empty()) {
        done.plan = std::move(PlanBuilder(done.plan).heading(std::move(heading))).build();
    }
    return done;
}

}  // namespace crosstick::plan
