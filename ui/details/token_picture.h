#pragma once

#include <QIcon>
#include <QWidget>

#include "core/measures/catalogue.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"

namespace crosstick::details {

/// A measure's own engraving as a small picture, for lists and the head of a card: at 5 px a millimetre, or smaller
/// where the room asks for it.
/// @param device  pixels of the screen to one of the window
[[nodiscard]] QPixmap tokenPixmap(const measures::Entry& entry, const press::Faces& faces, look::Light light,
                                  QSize size, double device);

class TokenPicture final : public QWidget {
    Q_OBJECT

  public:
    TokenPicture(const measures::Entry& entry, const press::Faces& faces, const look::Light& light,
                 QWidget* parent = nullptr);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    const measures::Entry& entry_;
    const press::Faces& faces_;
    const look::Light& light_;
};

}  // namespace crosstick::details
