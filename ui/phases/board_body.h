#pragma once

#include <optional>

#include <QWidget>

#include "ui/look/theme.h"
#include "ui/phases/board_layout.h"

namespace crosstick::phases {

/// What the cards lie on: the chosen phase is a band through all rows; a line shows where a card would go.
class BoardBody final : public QWidget {
    Q_OBJECT

  public:
    BoardBody(const look::Light& light, QWidget* parent);
    void setBand(const QRect& column);
    void setLanding(std::optional<QRect> line);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QRect band_;
    std::optional<QRect> landing_;
    const look::Light& light_;
};

/// The map sheet that all films lie on: the lowest row of the stack.
class SheetCard final : public QWidget {
    Q_OBJECT

  public:
    SheetCard(const look::Light& light, QWidget* parent);
    void tell(const QString& name, const QString& what, const QString& how);
    void setPicture(const QImage& picture);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QString name_, what_, how_;
    QImage picture_;
    const look::Light& light_;
};

}  // namespace crosstick::phases
