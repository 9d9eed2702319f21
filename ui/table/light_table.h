#pragma once

#include <memory>

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include "ui/table/film_layer.h"
#include "ui/table/fingers.h"
#include "ui/table/held_picture.h"
#include "ui/table/laid_sheets.h"
#include "ui/table/overlay.h"
#include "ui/table/rim_figures.h"
#include "ui/table/sliding_image.h"
#include "ui/table/tile_store.h"
#include "ui/tools/tool.h"
#include "ui/work/work.h"

class QTabletEvent;
class QTouchEvent;

namespace crosstick::table {

/// The light table: sheet, films, what is wet, cross-hair, threads, reading tag, rim and corner block. Turns pointer
/// and keys into events for the tool in hand, and what the tool answers into edits of the work.
class LightTable final : public QWidget {
    Q_OBJECT

  public:
    /// @param faces  what rim and corner are lettered in; null where they are missing. Outlives this.
    LightTable(work::Work& work, const press::Faces* faces, std::filesystem::path share, QWidget* parent = nullptr);
    ~LightTable() override;

    void setTheme(Theme theme);
    void setTool(std::unique_ptr<tools::Tool> tool);  ///< null: the hand
    /// Lays these films alone, in their own order and with nothing of the hand's over them; none: as the work says.
    void lieOnly(std::optional<std::vector<plan::FilmId>> films);
    /// Shows a sheet with its collar, whatever the plan says, until another tool is taken.
    void showCollar(std::optional<plan::SheetId> sheet);
    [[nodiscard]] bool isDrawing() const { return drawing_; }
    /// In the middle of something that another tool would lose.
    [[nodiscard]] bool isBusy() const { return drawing_ && tool_->isBusy(); }
    void finishTool();
    /// Ends what is in hand as a measure of another kind; false where it cannot be that.
    bool endToolAs(const measures::Entry& kind);
    /// The last point of what is drawn, else the point of what is chosen that the keys would move.
    [[nodiscard]] std::optional<geodesy::PlanePoint> measuredFrom() const;
    void press(geodesy::PlanePoint inPlan);  ///< as the hand would there
    void takeBackPoint();
    /// A place that is typed, in the plan's plane: the tool's hand lies there until another one, or nothing, is typed.
    void holdHandAt(std::optional<geodesy::PlanePoint> inPlan);
    /// A press there, as with the pointer; where it lies out of sight the table is slid to it.
    void pressAt(geodesy::PlanePoint inPlan);
    [[nodiscard]] tools::Wet wet() const { return tool_->wet(); }
    /// What is in the middle of the table, in the plan's plane.
    [[nodiscard]] std::optional<geodesy::PlanePoint> middleInPlan() const;
    /// What lies under the pointer, in the plan's plane; nothing where it is elsewhere.
    [[nodiscard]] std::optional<geodesy::PlanePoint> pointedInPlan() const;
    void renewTool();  ///< something that the tool waited for has come
    void fit();
    void fitSheet();
    void zoomBy(double factor);
    void turnTo(Degrees up);  ///< another grid azimuth lies upward, what is in the middle stays there
    /// The grid azimuth that is up on the paper sheet itself; 0 without a sheet.
    [[nodiscard]] Degrees pageUp() const;
    /// What the hand is drawn to beside points and ticks.
    void setSnapWish(drafting::SnapWish wish);
    [[nodiscard]] drafting::SnapWish snapWish() const { return snapWish_; }
    void showTrueSize();  ///< one millimetre of the sheet is one of the screen, as far as the screen tells its size
    [[nodiscard]] const View& view() const { return view_; }
    [[nodiscard]] Metres reach() const;  ///< on the ground: how far beside a thing still means it
    void setView(const View& view);
    void centreOn(geodesy::PlanePoint onGrid);
    /// Lines of ours over the films, in the grid of the work; they never print.
    void setGuides(std::vector<Guide> guides);
    [[nodiscard]] const std::vector<Guide>& guides() const { return guides_; }
    /// A place that is pointed at elsewhere.
    void setMark(std::optional<geodesy::PlanePoint> onGrid);
    [[nodiscard]] const std::optional<geodesy::PlanePoint>& mark() const { return mark_; }
    void show(const GridBox& ground);  ///< as large as the table holds it
    /// The ground of what is inked on the films that lie; nothing where there is no ink.
    [[nodiscard]] std::optional<GridBox> inked() const { return films_.picture().ground; }
    [[nodiscard]] std::optional<Spot> spotOf(geodesy::PlanePoint inPlan) const;
    /// Corners of a block that lies on the paper, on the table; none for anything else.
    [[nodiscard]] std::vector<QPointF> blockCorners(const plan::ItemId& item) const;
    /// Nothing is missing any more: every tile is there and the films are those of the plan.
    [[nodiscard]] bool isSettled() const;
    /// The sheet of the present plan has been seen, coarsely at least; without a sheet: the grid.
    [[nodiscard]] bool hasPainted() const { return hasPainted_; }
    [[nodiscard]] QSize sizeHint() const override { return {1000, 600}; }

  Q_SIGNALS:
    void toolDone();
    void refused(const Error& why);   ///< what the hand did cannot be
    void strokeDrawn();               ///< what is selected now is a line without a meaning yet
    void said(const QString& words);  ///< what else came of it
    void labelWanted();               ///< something new was placed: the caret belongs to its label
    void menuWanted(const QPoint& at);
    void turnedOver();                   ///< the pen's other end is on the glass: it wipes
    void typed(const QString& letters);  ///< letters and figures are for the tray
    void placed();                       ///< a tool's edit came to pass
    void givenUp();                      ///< a tool was laid down and nothing came of it
    void nextWanted(int step);           ///< Tab: the next thing on the table, or the one before
    void viewChanged();
    void pointedAt(crosstick::geodesy::PlanePoint onGrid);
    void filmsLaid();                     ///< the films' picture is another
    void sheetFailed(std::size_t sheet);  ///< its copy cannot be read

  protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void tabletEvent(QTabletEvent* event) override;
    bool event(QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

  private:
    static constexpr Zoom kLeast{0.002};
    static constexpr Zoom kMost{8};

    work::Work& work_;
    std::filesystem::path share_;
    const press::Faces* faces_;
    TileStore tiles_;
    std::vector<LaidSheet> laid_;  ///< the lowest first
    std::vector<SeamMark> seams_;
    std::optional<plan::SheetId> whole_;  ///< the sheet that is shown with its collar
    SlidingImage ground_;
    SlidingImage pannedTable_;  ///< ground and films in one, while the view only slides
    int pannedFilms_ = 0;       ///< the films' picture that is in it
    HeldPicture zoomedTable_;   ///< ground and films in one, while the view goes nearer or farther
    int zoomedFilms_ = 0;
    std::vector<SheetTile> arrived_;
    QTimer arrivals_;  ///< tiles that come one after the other are painted in one frame
    FilmLayer films_;
    View view_;
    Theme theme_ = Theme::Day;
    std::unique_ptr<tools::Tool> tool_;
    bool drawing_ = false;
    bool fitWanted_ = true;
    bool hasPainted_ = false;
    QTimer rest_;
    bool moving_ = false;
    std::optional<QPointF> panFrom_;
    Fingers fingers_;
    QTimer hold_;                 ///< a finger or a pen rests
    std::optional<QPointF> pen_;  ///< where a pen came down that has not moved since
    QElapsedTimer penSeen_;       ///< since a pen was over the glass
    QElapsedTimer penPressed_;    ///< since it came down the last time, and where
    QPointF penPressedAt_;
    bool wipes_ = false;  ///< the tool in hand was taken by turning the pen over
    bool spaceHeld_ = false;
    QPointF pointer_;
    bool pointerInside_ = false;
    std::optional<geodesy::PlanePoint> typedHand_;  ///< in the plan's plane
    drafting::SnapWish snapWish_;
    std::optional<drafting::Snap> snap_;  ///< what the hand is drawn to now
    std::vector<Guide> guides_;
    std::optional<geodesy::PlanePoint> mark_;
    std::shared_ptr<const Scene> scene_;
    std::optional<plan::FilmId> inset_;              ///< that is worked on
    std::optional<View> beforeInset_;                ///< how the table was looked at until then
    std::optional<std::vector<plan::FilmId>> only_;  ///< the films that a brief has laid

    void planReplaced();
    void renewSheet();
    void layTiles();
    void renewScene();
    void renewPreview();
    void lookAtInset();
    void orderFilms();
    void startMoving();
    void tellSeen();
    void showSeen(const work::Seen& seen);
    void fitOn(const GridBox& ground);
    void apply(const tools::Reply& reply);
    [[nodiscard]] std::optional<drafting::Snap> snapAt(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] QPointF handSpot() const;  ///< where the hand is, drawn to what it is drawn to
    [[nodiscard]] bool isRefused(const tools::Reply& reply);
    [[nodiscard]] bool isHeldFast();
    [[nodiscard]] bool takeTouch(const QTouchEvent& event);
    void does(const std::vector<Fingers::Deed>& deeds);
    void askForMenu(QPointF at);
    void holdOver();
    void turnPen(const QTabletEvent& event);
    [[nodiscard]] bool isPressedAgain(const QTabletEvent& event);
    [[nodiscard]] bool isPenNear() const;
    void tell(tools::Event::Kind kind, QPointF at, Qt::KeyboardModifiers modifiers, bool held);
    [[nodiscard]] tools::Ground ground() const;
    [[nodiscard]] tools::Touch touch() const;
    [[nodiscard]] const film::Frame* workingFrame() const;
    [[nodiscard]] std::optional<drawing::Point> onPaper(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] std::optional<geodesy::PlanePoint> inPlan(QPointF at) const;
    [[nodiscard]] std::optional<geodesy::PlanePoint> onGrid(geodesy::PlanePoint inPlan) const;
    void paintTable(QPainter& painter, const RimFigures& figures, const Palette& colours);
    /// Whole frames: at rest, while the view slides, while it goes nearer or farther.
    void paintZooming(QPainter& painter, double ratio, const RimFigures& figures, const Palette& colours);
    void paintGround(QPainter& painter, const QRectF& part, Scaling scaling, const RimFigures& figures,
                     const Palette& colours);
    void paintComing(QPainter& painter, const Palette& colours) const;
    [[nodiscard]] std::vector<QRectF> takeArrived();
    void paintOverlay(QPainter& painter, const Palette& colours);
    void paintChosen(QPainter& painter, const Palette& colours);
    void paintInHand(QPainter& painter, const Palette& colours);
    void paintWetLines(QPainter& painter, const tools::Wet& wet, const Palette& colours);
    [[nodiscard]] QPointF screen(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] std::vector<QPointF> screen(const std::vector<geodesy::PlanePoint>& inPlan) const;
    void paintStaleTraces(QPainter& painter, const Palette& colours);
};

}  // namespace crosstick::table
