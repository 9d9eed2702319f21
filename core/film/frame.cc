#include "core/film/frame.h"

#include <limits>
#include <utility>

#include "core/film/faults.h"
#include "core/film/registration.h"

namespace crosstick::film {
namespace {

constexpr double kNowhere = std::numeric_limits<double>::quiet_NaN();

geodesy::PlanePoint reached(const Result<geodesy::PlanePoint>& point) {
    return point ? *point : geodesy::PlanePoint{Metres(kNowhere), Metres(kNowhere)};
}

struct Window {
    geodesy::PlanePoint origin;
    drawing::Box box;
};

/// Without a window a film is only looked at, never printed: any fixed origin on the sheet keeps its numbers small.
Window windowOf(const plan::Plan& plan, const plan::Film& film, Scale scale) {
    std::optional<plan::Registration> registration = plan.registration();
    if (film.inset || (registration && !sharesRegistration(plan, film))) {
        const auto own = registrationFor(plan, film);
        registration = own ? std::optional(*own) : std::nullopt;
    }
    if (!registration) {
        const plan::SheetPtr sheet = plan.groundSheet(film);
        return {sheet ? sheet->placement.corner : geodesy::PlanePoint{}, {}};
    }
    const Metres width = registration->northEast.easting - registration->southWest.easting;
    const Metres height = registration->northEast.northing - registration->southWest.northing;
    if (width <= Metres(0) || height <= Metres(0)) {
        return {registration->ticks.empty() ? registration->southWest : registration->ticks.front(), {}};
    }
    return {{registration->southWest.easting, registration->northEast.northing},
            {0, 0, onPaper(width, scale).value(), onPaper(height, scale).value()}};
}

double factor(double percent) {
    return 1 + percent / 100;
}

}  // namespace

Frame::Frame(std::shared_ptr<const geodesy::PlaneLink> link, std::string gridCrs, Scale scale,
             geodesy::PlanePoint origin, drawing::Box window)
    : link_(std::move(link)), gridCrs_(std::move(gridCrs)), scale_(scale), origin_(origin), window_(window) {}

Result<Frame> Frame::of(const plan::Plan& plan, const plan::Film& film, std::optional<Scale> scale) {
    return geodesy::PlaneLink::between(plan.planeCrs(), plan.gridCrs(film)).and_then([&](geodesy::PlaneLink&& link) {
        return over(plan, film, std::make_shared<const geodesy::PlaneLink>(std::move(link)), scale);
    });
}

Result<Frame> Frame::over(const plan::Plan& plan, const plan::Film& film,
                          std::shared_ptr<const geodesy::PlaneLink> link, std::optional<Scale> scale) {
    const Scale chosen = scale ? *scale : scaleOf(plan, film);
    if (!(chosen.denominator > 0)) {
        return fail(kNoSuchScale, {{"scale", chosen.denominator}});
    }
    const Window window = windowOf(plan, film, chosen);
    return Frame(std::move(link), plan.gridCrs(film), chosen, window.origin, window.box);
}

drawing::Point Frame::onFilm(geodesy::PlanePoint inPlan) const {
    return gridToFilm(onGrid(inPlan));
}

geodesy::PlanePoint Frame::onGrid(geodesy::PlanePoint inPlan) const {
    return reached(link_->forward(inPlan));
}

geodesy::PlanePoint Frame::inPlan(geodesy::PlanePoint onGrid) const {
    return reached(link_->inverse(onGrid));
}

Frame Frame::fitted(const plan::PaperStretch& stretch) const {
    Frame fitted = *this;
    fitted.stretch_ = stretch;
    fitted.window_.right = window_.right * factor(stretch.eastPercent) / factor(stretch_.eastPercent);
    fitted.window_.bottom = window_.bottom * factor(stretch.northPercent) / factor(stretch_.northPercent);
    return fitted;
}

PaperMm Frame::east(Metres ground) const {
    return onPaper(ground, scale_) * factor(stretch_.eastPercent);
}

PaperMm Frame::north(Metres ground) const {
    return onPaper(ground, scale_) * factor(stretch_.northPercent);
}

drawing::Point Frame::gridToFilm(geodesy::PlanePoint onGrid) const {
    return {east(onGrid.easting - origin_.easting).value(), north(origin_.northing - onGrid.northing).value()};
}

geodesy::PlanePoint Frame::filmToGrid(drawing::Point onFilm) const {
    return {origin_.easting + onGround(PaperMm(onFilm.x / factor(stretch_.eastPercent)), scale_),
            origin_.northing - onGround(PaperMm(onFilm.y / factor(stretch_.northPercent)), scale_)};
}

}  // namespace crosstick::film
