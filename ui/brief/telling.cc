#include "ui/brief/telling.h"

#include <algorithm>

namespace crosstick::brief {
namespace {

bool liesIn(const plan::Film& film, int phase) {
    return film.phases.empty() || phase == 0 || film.phases.contains(phase);
}

bool contains(const std::vector<plan::FilmId>& films, const plan::FilmId& film) {
    return std::find(films.begin(), films.end(), film) != films.end();
}

/// Adds the stops of one phase, in which some films lie already.
void addPhase(std::vector<Step>& steps, const plan::Plan& plan, int phase) {
    std::vector<plan::FilmId> lies, fresh;
    for (const plan::FilmPtr& film : plan.films()) {
        if (liesIn(*film, phase)) {
            const bool stays = contains(steps.back().lies, film->id);
            (stays ? lies : fresh).push_back(film->id);
        }
    }
    if (fresh.empty()) {
        steps.push_back({phase, lies, std::nullopt});
        return;
    }
    for (const plan::FilmId& film : fresh) {
        lies.push_back(film);
        std::vector<plan::FilmId> inStack;
        for (const plan::FilmPtr& held : plan.films()) {
            if (contains(lies, held->id)) {
                inStack.push_back(held->id);
            }
        }
        steps.push_back({phase, std::move(inStack), film});
    }
}

}  // namespace

std::vector<Step> stepsOf(const plan::Plan& plan) {
    std::vector<Step> steps{{plan.phases().empty() ? 0 : plan.phases().front().number, {}, std::nullopt}};
    if (plan.films().empty()) {
        return steps;
    }
    if (plan.phases().empty()) {
        addPhase(steps, plan, 0);
    }
    for (const plan::Phase& phase : plan.phases()) {
        addPhase(steps, plan, phase.number);
    }
    return steps;
}

std::string whyOf(const plan::Plan& plan, const plan::ItemId& item) {
    if (const plan::MeasurePtr measure = plan.measure(item)) {
        return measure->why;
    }
    const plan::RoutePtr route = plan.route(item);
    return route ? route->why : std::string{};
}

Telling::Telling(plan::Plan plan) : plan_(std::move(plan)), steps_(stepsOf(plan_)) {}

std::vector<plan::FilmId> Telling::lies() const {
    return alone_ ? std::vector<plan::FilmId>{} : step().lies;
}

void Telling::goTo(std::size_t step) {
    at_ = std::min(step, steps_.size() - 1);
    alone_ = false;
    pointed_.reset();
}

/// The first stop of the phase that a stop belongs to; the sheet alone, before them all, is a stop of its own.
std::size_t Telling::phaseStart(std::size_t step) const {
    while (step > 1 && steps_[step - 1].phase == steps_[step].phase) {
        --step;
    }
    return step;
}

void Telling::turnTo(int phase) {
    const auto found =
        std::find_if(steps_.begin() + 1, steps_.end(), [phase](const Step& step) { return step.phase == phase; });
    if (found != steps_.end()) {
        goTo(static_cast<std::size_t>(found - steps_.begin()));
    }
}

void Telling::take(Key key) {
    switch (key) {
        case Key::Forward:
            return goTo(at_ + 1);
        case Key::Back:
            return goTo(at_ == 0 ? 0 : at_ - 1);
        case Key::NextPhase: {
            const auto next =
                std::find_if(steps_.begin() + static_cast<std::ptrdiff_t>(std::max<std::size_t>(at_, 1)), steps_.end(),
                             [this](const Step& other) { return at_ == 0 || other.phase != step().phase; });
            return next == steps_.end() ? void() : goTo(static_cast<std::size_t>(next - steps_.begin()));
        }
        case Key::PhaseBefore: {
            const std::size_t start = phaseStart(at_);
            return goTo(start < at_ ? start : start == 0 ? 0 : phaseStart(start - 1));
        }
        case Key::First:
            return goTo(0);
        case Key::Last:
            return goTo(steps_.size() - 1);
        case Key::Whys:
            whys_ = !whys_;
            return;
        case Key::NextWhy:
            return point(1);
        case Key::WhyBefore:
            return point(-1);
        case Key::SheetAlone:
            alone_ = !alone_;
            return;
        case Key::End:
            over_ = true;
            return;
    }
}

std::vector<plan::ItemId> Telling::reasons() const {
    return things(Whys::Written);
}

std::vector<plan::ItemId> Telling::unexplained() const {
    return things(Whys::Missing);
}

std::vector<plan::ItemId> Telling::things(Whys whys) const {
    std::vector<plan::ItemId> things;
    for (const plan::FilmId& id : lies()) {
        const plan::FilmPtr film = plan_.film(id);
        if (!film || (step().laid && *step().laid != id)) {
            continue;
        }
        for (const plan::Showing& showing : film->shows) {
            const bool isNew = std::find(things.begin(), things.end(), showing.item) == things.end();
            if (isNew && whyOf(plan_, showing.item).empty() == (whys == Whys::Missing)) {
                things.push_back(showing.item);
            }
        }
    }
    return things;
}

void Telling::point(int by) {
    const auto count = static_cast<int>(reasons().size());
    if (count == 0) {
        return;
    }
    const int now = pointed_ ? static_cast<int>(*pointed_) : by > 0 ? -1 : 0;
    pointed_ = static_cast<std::size_t>((now + by + count) % count);
}

std::optional<plan::ItemId> Telling::pointed() const {
    const auto things = reasons();
    return pointed_ && *pointed_ < things.size() ? std::optional(things[*pointed_]) : std::nullopt;
}

}  // namespace crosstick::brief
