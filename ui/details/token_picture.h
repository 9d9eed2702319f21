#pragma once

#include <QWidget>

#include "core/drawing/drawing.h"
#include "core/measures/catalogue.h"
#include "core/plan/measure.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"

namespace crosstick::details {

/// A measure's token at 5 px a millimetre with its upper left corner at a place.
void paintToken(QPainter& painter, QPointF at, const drawing::Drawing& token, const press::Faces& faces,
                look::Light light);
/// The room of a token, of so many pixels, in millimetres.
[[nodiscard]] drawing::Box tokenRoom(QSize pixels);

/// A measure's own engraving as a small picture at 5 px a millimetre, or smaller where it would not fit.
class TokenPicture final : public QWidget {
    Q_OBJECT

  public:
    TokenPicture(const measures::Entry& entry, const press::Faces& faces, const look::Light& light,
                 QWidget* parent = nullptr);
    void show(const plan::MeasurePtr& measure);  ///< as it is now

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const measures::Entry& entry_;
    plan::MeasurePtr shown_;
    const press::Faces& faces_;
    const look::Light& light_;
};

}  // namespace crosstick::details
