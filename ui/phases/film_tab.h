#pragma once

#include "ui/phases/film_button.h"

namespace crosstick::phases {

/// A film's tab with its clipped corner and the notches of its place in the set.
class FilmTab final : public FilmButton {
    Q_OBJECT

  public:
    using FilmButton::FilmButton;
    [[nodiscard]] QSize sizeHint() const override;

  protected:
    void paintEvent(QPaintEvent* event) override;
};

}  // namespace crosstick::phases
