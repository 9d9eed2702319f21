#pragma once

#include <optional>

#include <QWidget>

#include "core/movement/profile.h"
#include "ui/look/theme.h"

namespace crosstick::march {

/// The ground along the ledger's route, in the sill: way to the right, height up, route points and crossed lines over
/// it, steep parts thick. The place under the pointer, here or on the table, is marked on both; arrows move it.
class ProfileStrip final : public QWidget {
    Q_OBJECT

  public:
    explicit ProfileStrip(QWidget* parent);
    void setLight(look::Light light);
    void show(std::optional<movement::Profile> profile, const QString& otherwise);
    /// The place of the route that is nearest to a spot of the table, where it lies within reach.
    void showNear(geodesy::PlanePoint onGrid, Metres reach);
    [[nodiscard]] const std::optional<movement::Profile>& profile() const { return profile_; }
    [[nodiscard]] std::optional<std::size_t> at() const { return at_; }
    /// "1240 m from SP 1, height 136 m, 12 % up"; empty where nothing is marked.
    [[nodiscard]] QString words() const;

  Q_SIGNALS:
    void pointedAt(std::optional<crosstick::geodesy::PlanePoint> onGrid);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    std::optional<movement::Profile> profile_;
    QString otherwise_;
    std::optional<std::size_t> at_;  ///< of the profile's spots
    look::Light light_ = look::Light::Day;

    [[nodiscard]] QRectF field() const;
    [[nodiscard]] QPointF spotOf(Metres ground, Metres height) const;
    [[nodiscard]] double timesTooHigh() const;
    void point(std::optional<std::size_t> at);
    void paintScale(QPainter& painter) const;
    void paintGround(QPainter& painter) const;
    void paintMarks(QPainter& painter) const;
    void paintHand(QPainter& painter) const;
};

}  // namespace crosstick::march
