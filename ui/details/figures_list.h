#pragma once

#include <vector>

#include <QWidget>

#include "ui/look/theme.h"

namespace crosstick::details {

/// A row of figures: what it is, and its value; a heading where it has none.
struct FigureRow {
    QString what;
    QString value;
    friend bool operator==(const FigureRow&, const FigureRow&) = default;
};

/// Figures of a thing in rows, values at the right, a hair line under each.
class FiguresList final : public QWidget {
    Q_OBJECT

  public:
    explicit FiguresList(const look::Light& light, QWidget* parent = nullptr);
    void show(std::vector<FigureRow> rows);
    [[nodiscard]] const std::vector<FigureRow>& rows() const { return rows_; }

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const look::Light& light_;
    std::vector<FigureRow> rows_;
};

}  // namespace crosstick::details
