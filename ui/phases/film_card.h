#pragma once

#include <optional>

#include <QImage>

#include "ui/phases/film_button.h"

namespace crosstick::phases {

/// A film as a card on the rail rolled down: its picture, its name, how much lies on it, one line of state. A hand
/// takes hold of an end, to give it another phase, or of the whole, to restack it.
class FilmCard final : public FilmButton {
    Q_OBJECT

  public:
    static constexpr QSize kPicture{76, 46};
    enum class Grip { FirstPhase, LastPhase, Whole };

    using FilmButton::FilmButton;
    void setPicture(const QImage& picture);
    /// Parts of the card, from its left edge, that lie in phases it does not belong to.
    void setGaps(std::vector<QRect> gaps);
    [[nodiscard]] QRect nameRoom() const;  ///< where its name stands, and a field for it

  Q_SIGNALS:
    void pulled(crosstick::phases::FilmCard::Grip grip, const QPoint& to);  ///< in the coordinates of the parent
    void letGo(crosstick::phases::FilmCard::Grip grip, const QPoint& at);
    void givenUp();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    QImage picture_;
    std::vector<QRect> gaps_;
    std::optional<QPoint> pressed_;
    std::optional<Grip> pulling_;

    [[nodiscard]] Grip gripAt(const QPoint& at) const;
    [[nodiscard]] bool hasPicture() const;
    void paintGaps(QPainter& painter) const;
    void paintState(QPainter& painter, const QRect& room) const;
};

}  // namespace crosstick::phases
