#include "ui/phases/film_naming.h"

#include <QCoreApplication>

namespace crosstick::phases {

std::optional<QString> nameFilm(work::Work& work, const plan::FilmId& film, const QString& name) {
    const plan::FilmPtr held = work.committed().film(film);
    if (!held || name.toStdString() == held->name) {
        return std::nullopt;
    }
    if (name.isEmpty()) {
        return QCoreApplication::translate("Film", "A film needs a name: its title on the paper.");
    }
    if (work.committed().filmNamed(name.toStdString())) {
        return QCoreApplication::translate("Film", "Another film is named %1. Give this one its own name.").arg(name);
    }
    plan::Film next = *held;
    next.name = name.toStdString();
    plan::PlanBuilder builder(work.committed());
    builder.put(std::move(next));
    work.commit(std::move(builder).build(), "rename a film");
    return std::nullopt;
}

}  // namespace crosstick::phases
