#pragma once

#include <optional>

#include <QWidget>

#include "core/registration/registering.h"
#include "ui/look/theme.h"
#include "ui/press/faces.h"
#include "ui/table/tile_store.h"

namespace crosstick::registering {

/// A scan as it is, with what is known of it: marks, crossings that were found, how far each lies off, and a loupe over
/// the spot that is being set. Places are the picture's own pixels.
class PictureCanvas final : public QWidget {
    Q_OBJECT

  public:
    PictureCanvas(const registration::Registering* work, const press::Faces* faces, QWidget* parent = nullptr);

    void show(table::SheetInk ink, look::Light light);
    void setLight(look::Light light);
    void setWork(const registration::Registering* work);
    /// The spot that waits for its name, seen in the loupe; none: the loupe follows the hand.
    void setPending(std::optional<registration::PixelPoint> at);
    [[nodiscard]] std::optional<registration::PixelPoint> pending() const { return pending_; }
    void fit();
    /// Brings a spot into the middle, near enough to judge it.
    void lookAt(registration::PixelPoint at);
    void renew() { update(); }
    void setArrows(bool shown);
    [[nodiscard]] const table::View& view() const { return view_; }
    [[nodiscard]] registration::PixelPoint pixelAt(QPointF spot) const;
    [[nodiscard]] QPointF spotOf(registration::PixelPoint pixel) const;
    [[nodiscard]] double pixelsOnScreen() const;  ///< logical pixels of the screen for one of the picture
    [[nodiscard]] bool isSettled() const { return !tiles_.isWaiting(); }

  Q_SIGNALS:
    void pointed(double x, double y);            ///< a press that was no drag, in the picture's pixels
    void markPointed(std::size_t mark);          ///< on a mark that is there
    void crossingPointed(std::size_t crossing);  ///< on a crossing that was found
    void nudged(double right, double down);      ///< by the arrow keys, in the picture's pixels
    void broken();                               ///< the picture's copy cannot be read

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

  private:
    const registration::Registering* work_;
    const press::Faces* faces_;
    table::TileStore tiles_;
    table::SheetInk ink_;
    table::View view_;
    look::Light light_ = look::Light::Day;
    std::optional<registration::PixelPoint> pending_;
    std::optional<QPointF> pressed_, hand_;
    bool dragged_ = false, fitted_ = false, arrows_ = false;

    void paintPicture(QPainter& painter, const table::View& view, const QRectF& part);
    void paintMarks(QPainter& painter, const table::View& view) const;
    void paintArrows(QPainter& painter) const;
    void paintLoupe(QPainter& painter);
};

}  // namespace crosstick::registering
