#pragma once

#include <memory>

#include <QTimer>
#include <QWidget>

#include "ui/table/film_layer.h"
#include "ui/table/fingers.h"
#include "ui/table/held_picture.h"
#include "ui/table/laid_sheets.h"
#include "ui/table/rim_figures.h"
#include "ui/table/sliding_image.h"
#include "ui/table/tile_store.h"
#include "ui/tools/tool.h"
#include "ui/work/work.h"

class QTouchEvent;

namespace crosstick::table {

/// The light table: sheet, films, what is wet, cross-hair, threads, reading tag, rim and corner block. Turns pointer
/// and keys into events for the tool in hand, and what the tool answers into edits of the work.
class LightTable final : public QWidget {
    Q_OBJECT

  public:
    LightTable(work::Work& work, std::filesystem::path share, QWidget* parent = nullptr);
    ~LightTable() override;

    void setTheme(Theme theme);
    void setTool(std::unique_ptr<tools::Tool> tool);  ///< null: the hand
    /// Lays these films alone, in their own order and with nothing of the hand's over them; none: as the work says.
    void lieOnly(std::optional<std::vector<plan::FilmId>> films);
    /// Shows a sheet with its collar, whatever the plan says, until another tool is taken.
    void showCollar(std::optional<plan::SheetId> sheet);
    [[nodiscard]] bool isDrawing() const { return drawing_; }
    void finishTool();
    void renewTool();  ///< something that the tool waited for has come
    void fit();
    void fitSheet();
    void zoomBy(double factor);
    void turnTo(Degrees up);  ///< another grid azimuth lies upward, what is in the middle stays there
    /// The grid azimuth that is up on the paper sheet itself; 0 without a sheet.
    [[nodiscard]] Degrees pageUp() const;
    void showTrueSize();  ///< one millimetre of the sheet is one of the screen, as far as the screen tells its size
    [[nodiscard]] const View& view() const { return view_; }
    void setView(const View& view);
    void centreOn(geodesy::PlanePoint onGrid);
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
    void refused(const Error& why);  ///< what the hand did cannot be
    void labelWanted();              ///< something new was placed: the caret belongs to its label
    void menuWanted(const QPoint& at);
    void nextWanted(int step);  ///< Tab: the next thing on the table, or the one before
    void viewChanged();
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
    bool event(QEvent* event) override;
    bool focusNextPrevChild(bool next) override;

  private:
    static constexpr Zoom kLeast{0.002};
    static constexpr Zoom kMost{8};

    work::Work& work_;
    std::filesystem::path share_;
    std::optional<press::Faces> faces_;
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
    bool spaceHeld_ = false;
    QPointF pointer_;
    bool pointerInside_ = false;
    std::shared_ptr<const Scene> scene_;
    std::optional<std::vector<plan::FilmId>> only_;  ///< the films that a brief has laid

    void planReplaced();
    void renewSheet();
    void layTiles();
    void renewScene();
    void renewPreview();
    void orderFilms();
    void startMoving();
    void apply(const tools::Reply& reply);
    [[nodiscard]] bool takeTouch(const QTouchEvent& event);
    void does(const std::vector<Fingers::Deed>& deeds);
    void askForMenu(QPointF at);
    void holdOver();
    void tell(tools::Event::Kind kind, QPointF at, Qt::KeyboardModifiers modifiers, bool held);
    [[nodiscard]] tools::Ground ground() const;
    [[nodiscard]] tools::Touch touch() const;
    [[nodiscard]] const film::Frame* workingFrame() const;
    [[nodiscard]] std::optional<drawing::Point> onPaper(geodesy::PlanePoint inPlan) const;
    [[nodiscard]] std::vector<plan::FilmPtr> shownFilms() const;
    [[nodiscard]] std::optional<geodesy::PlanePoint> inPlan(QPointF at) const;
    [[nodiscard]] std::optional<geodesy::PlanePoint> onGrid(geodesy::PlanePoint inPlan) const;
    void paintTable(QPainter& painter, const RimFigures& figures, const Palette& colours);
    /// Whole frames: at rest, while the view slides, while it goes nearer or farther.
    void paintZooming(QPainter& painter, double ratio, const RimFigures& figures, const Palette& colours);
    void paintGround(QPainter& painter, const QRectF& part, Scaling scaling, const RimFigures& figures,
                     const Palette& colours);
    [[nodiscard]] std::vector<QRectF> takeArrived();
    void paintOverlay(QPainter& painter, const Palette& colours);
};

}  // namespace crosstick::table
