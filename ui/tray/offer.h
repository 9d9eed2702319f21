#pragma once

#include <functional>
#include <optional>

#include <QAbstractButton>

#include "core/drawing/drawing.h"
#include "core/measures/meant.h"
#include "core/plan/plan.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"

namespace crosstick::tray {

/// A measure to choose: its own engraving, its abbreviation, its name, and the key that takes it.
class Offer final : public QAbstractButton {
    Q_OBJECT

  public:
    static constexpr QSize kSize{150, 68};

    /// @param faces  what it is lettered in; null where they are missing
    Offer(const press::Faces* faces, const look::Light& light, QWidget* parent);
    /// As it would be drawn now, with the number that it would get.
    void show(const measures::Meant& meant, const plan::Plan& plan, const QString& key);
    [[nodiscard]] const measures::Meant& meant() const { return meant_; }
    [[nodiscard]] QSize sizeHint() const override { return kSize; }

  protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    const press::Faces* faces_;
    const look::Light& light_;
    measures::Meant meant_;
    plan::Measure shown_;
    std::optional<drawing::Drawing> token_;  ///< made when it is first seen
    QString key_;
};

}  // namespace crosstick::tray
