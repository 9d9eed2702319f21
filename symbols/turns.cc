#include "symbols/turns.h"

#include <algorithm>
#include <iterator>

#include "symbols/routes.h"

namespace crosstick::symbols {
namespace {

constexpr double kApart = 0.6;  // of the letters of different things

enum class PlacedBy { Hand, Rule };

PlacedBy placedBy(const Subject& subject) {
    return subject.symbolAt || subject.labelAt ? PlacedBy::Hand : PlacedBy::Rule;
}

std::vector<Sorted> inTurn(const std::vector<Sorted>& sorted, const std::vector<Turn>& turns, PlacedBy who) {
    std::vector<Sorted> all;
    for (const Turn turn : turns) {
        std::copy_if(sorted.begin(), sorted.end(), std::back_inserter(all), [&](const Sorted& one) {
            return turnOf(one) == turn && placedBy(*one.subject) == who && !one.subject->follows;
        });
    }
    return all;
}

/// How one is drawn, with those of its row, where nobody else comes after what is placed already.
struct Trial {
    std::vector<Subject> drawn;  ///< itself, then its row
    drawing::Occupancy::Taken taken;
    bool isContested = false;  ///< another wants its place, too, or it found none
};

Trial tried(Desk& desk, const Sorted& one) {
    Trial trial;
    trial.drawn.reserve(one.subject->row.size() + 1);
    trial.drawn.push_back(*one.subject);
    for (const Subject* follower : one.subject->row) {
        trial.drawn.push_back(*follower);
    }
    for (std::size_t n = 1; n < trial.drawn.size(); ++n) {
        trial.drawn.front().row[n - 1] = &trial.drawn[n];
    }
    const auto level = desk.taken().level();
    const std::size_t remarked = desk.remarked();
    one.rule->place(desk, trial.drawn.front());
    trial.isContested = desk.remarked() > remarked;
    desk.forgetRemarks(remarked);
    trial.taken = desk.taken().takeBack(level);
    return trial;
}

/// Draws one as it was tried.
void settle(Desk& desk, const Sorted& one, Trial&& trial) {
    desk.taken().put(trial.taken);
    const std::vector<Subject*> row = one.subject->row;
    *one.subject = std::move(trial.drawn.front());
    one.subject->row = row;
    for (std::size_t n = 0; n < row.size(); ++n) {
        *row[n] = std::move(trial.drawn[n + 1]);
    }
}

void findContested(std::vector<Trial>& trials) {
    struct Wish {
        const TurnedBox* box;
        drawing::Box bounds;
        Trial* whose;
    };
    std::vector<Wish> wishes;
    for (Trial& trial : trials) {
        for (const TurnedBox& box : trial.taken.boxes()) {
            wishes.push_back({&box, box.bounds().grown(kApart), &trial});
        }
    }
    std::sort(wishes.begin(), wishes.end(), [](const Wish& a, const Wish& b) { return a.bounds.left < b.bounds.left; });
    for (auto a = wishes.begin(); a != wishes.end(); ++a) {
        for (auto b = a + 1; b != wishes.end() && b->bounds.left <= a->bounds.right; ++b) {
            if (a->whose != b->whose && a->bounds.meets(b->bounds) && a->box->grown(kApart).meets(*b->box)) {
                a->whose->isContested = b->whose->isContested = true;
            }
        }
    }
}

void placeAll(Desk& desk, const std::vector<Sorted>& all) {
    std::vector<Trial> trials;
    trials.reserve(all.size());
    for (const Sorted& one : all) {
        trials.push_back(tried(desk, one));
    }
    findContested(trials);
    std::vector<const Sorted*> late;
    for (std::size_t n = 0; n < all.size(); ++n) {
        if (!trials[n].isContested && desk.taken().isFree(trials[n].taken)) {
            settle(desk, all[n], std::move(trials[n]));
        } else {
            late.push_back(&all[n]);
        }
    }
    for (const Sorted* one : late) {
        one->rule->place(desk, *one->subject);
    }
}

}  // namespace

Turn turnOf(const Sorted& one) {
    return one.isRoute() ? Turn::Routes : one.rule->turn;
}

void placeInTurn(Desk& desk, const std::vector<Sorted>& sorted, const std::vector<Subject*>& routes) {
    const std::vector<Turn> symbols{Turn::Blocks, Turn::Symbols};
    const std::vector<Turn> names{Turn::LineEnds, Turn::Boundaries, Turn::Areas};
    const std::vector<Turn> words{Turn::Words};
    for (const auto& turns : {symbols, names, words}) {
        for (const Sorted& one : inTurn(sorted, turns, PlacedBy::Hand)) {
            one.rule->place(desk, *one.subject);
        }
    }
    letterRoutesByHand(desk, routes);
    placeAll(desk, inTurn(sorted, symbols, PlacedBy::Rule));
    placeAll(desk, inTurn(sorted, names, PlacedBy::Rule));
    letterRoutes(desk, routes);
    placeAll(desk, inTurn(sorted, words, PlacedBy::Rule));
}

}  // namespace crosstick::symbols
