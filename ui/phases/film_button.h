#pragma once

#include <QAbstractButton>

#include "ui/look/theme.h"
#include "ui/phases/film_facts.h"

namespace crosstick::phases {

/// A film to be chosen: its tab on the rail rolled up, its card on the rail rolled down. Who listens hears the film and
/// then, one by one, what lies on it (film_access.h).
class FilmButton : public QAbstractButton {
    Q_OBJECT

  public:
    FilmButton(work::Work& work, FilmFacts facts, const look::Light& light, QWidget* parent);
    [[nodiscard]] const plan::FilmId& film() const { return facts_.film; }
    [[nodiscard]] const FilmFacts& facts() const { return facts_; }
    void setFacts(const FilmFacts& facts);
    [[nodiscard]] work::Work& work() const { return work_; }

  Q_SIGNALS:
    void nameWanted();

  protected:
    [[nodiscard]] const look::Light& light() const { return light_; }
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    /// The outline of the film in a state: working, hidden, or neither.
    void paintFilm(QPainter& painter, const QRectF& room) const;
    /// The name with the marks of what the film is doing, from a place to the right; the room that is left is cut off.
    void paintName(QPainter& painter, const QRectF& room) const;
    [[nodiscard]] double nameWide() const;  ///< with its marks

  private:
    work::Work& work_;
    FilmFacts facts_;
    const look::Light& light_;

    [[nodiscard]] std::vector<QPainterPath> marks() const;
};

}  // namespace crosstick::phases
