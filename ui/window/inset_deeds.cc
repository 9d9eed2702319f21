// Insets: parts of a film at a larger scale.
#include "core/film/block.h"
#include "core/film/inset.h"
#include "ui/tools/box_tool.h"
#include "ui/window/window.h"

namespace crosstick::window {
namespace {

/// The film that an inset of the working film is a part of: that film, or what it is an inset of itself.
plan::FilmPtr parentOf(const plan::Plan& plan, const std::optional<plan::FilmId>& working) {
    const plan::FilmPtr film = working ? plan.film(*working) : nullptr;
    return film && film->inset ? plan.film(film->inset->parent) : film;
}

}  // namespace

void Window::drawInset() {
    if (work_.grid() == nullptr || !parentOf(work_.committed(), work_.workingFilm())) {
        return say(tr("There is no film to draw an inset of. Edit, New film makes one."));
    }
    say({});
    work_.select(std::nullopt);
    detailsWanted_ = false;
    arrange();
    const auto words = [this](geodesy::PlanePoint corner, geodesy::PlanePoint opposite) {
        const plan::FilmPtr parent = parentOf(work_.committed(), work_.workingFilm());
        const auto scale = parent ? film::insetScale(work_.committed(), *parent, corner, opposite) : std::nullopt;
        return scale ? "Inset " + film::scaleText(*scale) : std::string("Inset, too large for the paper");
    };
    layTrayAway();
    table_->setTool(std::make_unique<tools::BoxTool>(
        gridWays(), "drag a box over what is to be larger", words,
        [this](geodesy::PlanePoint corner, geodesy::PlanePoint opposite) { takeInset(corner, opposite); }));
    table_->setFocus();
}

/// The working film's; where that is an inset, another place for it.
void Window::takeInset(geodesy::PlanePoint corner, geodesy::PlanePoint opposite) {
    const plan::FilmPtr working = work_.workingFilm() ? work_.committed().film(*work_.workingFilm()) : nullptr;
    const plan::FilmPtr parent = parentOf(work_.committed(), work_.workingFilm());
    if (!parent) {
        return;
    }
    const auto place = film::proposeInset(work_.committed(), *parent, corner, opposite);
    if (!place) {
        return say(outside_.say(place.error()));
    }
    if (working->inset) {
        work_.commit(film::movedInset(work_.committed(), working->id, *place), "move the inset");
        return;
    }
    std::string name;
    for (int number = 1; name.empty() || work_.committed().filmNamed(name); ++number) {
        name = "INSET " + std::to_string(number);
    }
    const Uuid id = work_.newId();
    work_.commit(film::withInset(work_.committed(), *parent, *place, id, name), "draw an inset");
    work_.setWorkingFilm(id);
    renameFilm(id);
}

void Window::askForInset() {
    if (work_.grid() == nullptr || !parentOf(work_.committed(), work_.workingFilm())) {
        return say(tr("There is no film to draw an inset of. Edit, New film makes one."));
    }
    const plan::FilmPtr inset = workingInset();
    const QString now = inset ? gridsToType({inset->inset->place.southWest, inset->inset->place.northEast}) : QString();
    question_->ask(tr("Inset from corner to corner:"), now, [this](const QString& typed) -> std::optional<QString> {
        const auto corners = gridsTyped(typed);
        if (!corners) {
            return outside_.say(corners.error());
        }
        if (corners->size() != 2) {
            return tr("Two grids, parted by a comma: opposite corners of the inset.");
        }
        takeInset(corners->front(), corners->back());
        return std::nullopt;
    });
}

}  // namespace crosstick::window
