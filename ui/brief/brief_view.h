#pragma once

#include <optional>

#include <QPixmap>
#include <QPointF>
#include <QVariantAnimation>
#include <QWidget>

#include "ui/brief/brief_strip.h"
#include "ui/brief/telling.h"
#include "ui/table/light_table.h"

namespace crosstick::brief {

/// The brief: lies over the whole table, whose picture it shows film by film, with a strip at its foot, whys in tags
/// and a ring to point with. While it is seen it takes every key; it changes nothing in the plan, and the table lies
/// afterwards as it lay before.
class BriefView final : public QWidget {
    Q_OBJECT

  public:
    BriefView(work::Work& work, table::LightTable& table, QWidget* parent);
    void setLight(look::Light light);
    void begin();  ///< anew, from the sheet alone
    /// How far it has been told; null while there is none.
    [[nodiscard]] const Telling* telling() const { return telling_ ? &*telling_ : nullptr; }
    [[nodiscard]] StripWords words() const;
    /// Where it is pointed at; nothing while the ring is away.
    [[nodiscard]] std::optional<QPointF> ring() const { return ring_; }
    [[nodiscard]] bool isLaying() const { return !before_.isNull(); }  ///< a film is on its way

  Q_SIGNALS:
    void ended();

  protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void leaveEvent(QEvent* event) override;

  private:
    work::Work& work_;
    table::LightTable& table_;
    look::Light light_ = look::Light::Day;
    std::optional<Telling> telling_;
    std::optional<table::View> kept_;       ///< how the table lay before
    std::optional<table::GridBox> ground_;  ///< what is shown until somebody goes nearer or elsewhere
    std::optional<QPointF> ring_, pressed_, panned_;
    QPixmap before_;  ///< the table as it lay, while the next film comes down over it
    QVariantAnimation laying_;

    void take(Key key);
    void tell(const std::vector<plan::FilmId>& before);
    void end();
    void lookAt(const table::View& view);
    void moveRing(QPointF to);
    void pointAt(const plan::ItemId& item);
    [[nodiscard]] bool takeOwn(const QKeyEvent& event);
    [[nodiscard]] QRectF sheetRoom() const;
    [[nodiscard]] std::optional<QPointF> spotOf(const plan::ItemId& item) const;
    void paintWhys(QPainter& painter, const look::Colours& c) const;
};

}  // namespace crosstick::brief
