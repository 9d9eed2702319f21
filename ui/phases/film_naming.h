#pragma once

#include <optional>

#include <QString>

#include "ui/work/work.h"

namespace crosstick::phases {

/// Gives a film another name, as one step of the history where it is another one. Nothing where it was taken; else why
/// it was not.
[[nodiscard]] std::optional<QString> nameFilm(work::Work& work, const plan::FilmId& film, const QString& name);

}  // namespace crosstick::phases
