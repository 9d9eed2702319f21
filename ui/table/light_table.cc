#include "ui/table/light_table.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "core/film/registration.h"
#include "core/geodesy/place_text.h"
#include "core/movement/paper_figures.h"
#include "ui/table/corner_block.h"
#include "ui/table/hand_words.h"
#include "ui/table/overlay.h"
#include "ui/table/rim_painter.h"
#include "ui/tools/hand_tool.h"

namespace crosstick::table {
namespace {

constexpr double kFigureRoom = 36;
constexpr double kFitMargin = 28;
constexpr double kPadding = 192;  ///< films are painted so far beyond the edges, so that a drag finds them there
constexpr int kRestMs = 120;
constexpr int kArrivalsMs = 8;
constexpr Scale kClosest{2500};

View firstView() {
    return {Area{0, 0, 100, 100}, {Metres(0), Metres(0)}, Zoom(0.1)};
}

/// All that a plan's sheets cover.
GridBox sheetsGround(const std::vector<LaidSheet>& laid) {
    GridBox ground = groundOf(laid.front());
    for (const LaidSheet& one : laid) {
        ground = ground.joined(groundOf(one));
    }
    return ground;
}

plan::SheetPtr firstSheet(const plan::Plan& plan) {
    return plan.sheets().empty() ? nullptr : plan.sheets().front();
}

}  // namespace

LightTable::LightTable(work::Work& work, const press::Faces* faces, std::filesystem::path share, QWidget* parent)
    : QWidget(parent),
      work_(work),
      share_(std::move(share)),
      faces_(faces),
      films_(share_),
      view_(firstView()),
      tool_(std::make_unique<tools::HandTool>()) {
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Light table"));
    setMinimumSize(240, 100);  // over the raised tray on the least window
    setAttribute(Qt::WA_AcceptTouchEvents);
    hold_.setSingleShot(true);
    hold_.setInterval(Fingers::kHoldMs);
    connect(&hold_, &QTimer::timeout, this, &LightTable::holdOver);
    rest_.setSingleShot(true);
    rest_.setInterval(kRestMs);
    connect(&rest_, &QTimer::timeout, this, [this] {
        moving_ = false;
        orderFilms();
        update();
    });
    connect(&tiles_, &TileStore::arrived, this, [this](SheetTile tile) {
        arrived_.push_back(tile);
        if (hasPainted_ && !arrivals_.isActive()) {
            arrivals_.start();
        } else if (!hasPainted_ && !paintingActive()) {
            update();  // the first of a sheet is not waited for
        }
    });
    arrivals_.setSingleShot(true);
    arrivals_.setInterval(kArrivalsMs);
    connect(&arrivals_, &QTimer::timeout, this, [this] { update(); });
    connect(&tiles_, &TileStore::glanced, this, [this] { update(); });
    connect(&tiles_, &TileStore::failed, this, &LightTable::sheetFailed);
    connect(&films_, &FilmLayer::changed, this, [this] {
        if (fitWanted_) {
            fit();
        }
        update();
        Q_EMIT filmsLaid();
    });
    connect(&work_, &work::Work::planReplaced, this, &LightTable::planReplaced);
    connect(&work_, &work::Work::planChanged, this, &LightTable::renewScene);
    connect(&work_, &work::Work::planChanged, this, &LightTable::renewPreview);
    connect(&work_, &work::Work::tableChanged, this, &LightTable::renewScene);
    connect(&work_, &work::Work::selectionChanged, this, [this] { update(); });
    connect(&work_, &work::Work::seenAgain, this, &LightTable::showSeen);
    connect(&work_.sheetGrounds(), &work::SheetGrounds::changed, this, &LightTable::renewSheet);
    connect(&work_, &work::Work::groundChanged, this, &LightTable::renewSheet);
    if (work_.isOpen()) {
        planReplaced();
    }
}

LightTable::~LightTable() = default;

void LightTable::setTheme(Theme theme) {
    theme_ = theme;
    renewSheet();
    if (work_.isOpen()) {
        orderFilms();
    }
}

void LightTable::planReplaced() {
    hasPainted_ = false;
    inset_.reset();
    beforeInset_.reset();
    films_.clear();
    setTool(nullptr);
    fitWanted_ = true;
    setTheme(theme_);
    if (!laid_.empty()) {
        view_ = View::fitting(sheetsGround(laid_), insideRim(width(), height()), kFitMargin, zoomFor(kClosest));
    }
    renewScene();
}

void LightTable::renewScene() {
    if (!work_.isOpen()) {
        return;
    }
    auto scene = std::make_shared<Scene>();
    scene->plan = work_.plan();
    for (const plan::FilmPtr& film : work_.filmsSeen()) {
        scene->films.push_back(film->id);
        if (work_.look(film->id).tint != work::Tint::None) {
            scene->tinted.insert(film->id);
        }
    }
    if (only_) {
        scene->films = *only_;
    }
    scene->working = only_ ? std::nullopt : work_.workingFilm();
    scene->figures = work_.figures();
    scene->angles = work_.angles();
    scene->pens = work_.pens() == work::Pens::One ? symbols::PenMode::OnePen : symbols::PenMode::Colour;
    scene_ = std::move(scene);
    lookAtInset();
    orderFilms();
    update();
}

void LightTable::lieOnly(std::optional<std::vector<plan::FilmId>> films) {
    only_ = std::move(films);
    renewScene();
}

void LightTable::orderFilms() {
    if (!scene_) {
        return;
    }
    FilmOrder order;
    order.scene = scene_;
    for (const plan::FilmId& film : scene_->films) {
        order.looks[film] = work_.look(film);
    }
    const Area& area = view_.area();
    const Area padded{0, 0, area.width + 2 * kPadding, area.height + 2 * kPadding};
    order.view = view_.in(padded);
    order.deviceRatio = devicePixelRatioF();
    order.theme = theme_;
    films_.order(std::move(order));
}

bool LightTable::isSettled() const {
    return !moving_ && !tiles_.isWaiting() && !work_.sheetGrounds().isReading() && films_.isUpToDate() &&
           !(fitWanted_ && scene_ && !scene_->films.empty());
}

void LightTable::setView(const View& view) {
    view_ = view;
    startMoving();
    tellSeen();
    update();
    Q_EMIT viewChanged();
}

void LightTable::tellSeen() {
    work_.setSeen({view_.centre(), work::Nearness(view_.zoom().value()), view_.up()});
}

void LightTable::showSeen(const work::Seen& seen) {
    fitWanted_ = false;
    setView(View(view_.area(), seen.centre, Zoom(seen.nearness.value()), seen.up));
}

void LightTable::startMoving() {
    moving_ = true;
    rest_.start();
    if (!films_.covers(view_)) {  // a long pan, or farther away: films are painted on the way already
        orderFilms();
    }
}

void LightTable::centreOn(geodesy::PlanePoint onGrid) {
    setView(view_.centredOn(onGrid));
}

void LightTable::fit() {
    fitWanted_ = false;
    const auto& ground = films_.picture().ground;
    if (!ground) {
        fitSheet();
        return;
    }
    show(*ground);
}

void LightTable::show(const GridBox& ground) {
    setView(View::fitting(ground, insideRim(width(), height()), kFitMargin, zoomFor(kClosest), view_.up()));
}

void LightTable::fitSheet() {
    fitWanted_ = false;
    if (!laid_.empty()) {
        show(sheetsGround(laid_));
    } else if (const auto& registration = work_.plan().registration()) {
        show({registration->southWest, registration->northEast});
    }
}

void LightTable::setGuides(std::vector<Guide> guides) {
    if (guides_ != guides) {
        guides_ = std::move(guides);
        update();
    }
}

void LightTable::setMark(std::optional<geodesy::PlanePoint> onGrid) {
    mark_ = onGrid;
    update();
}

void LightTable::zoomBy(double factor) {
    const Spot at = pointerInside_ ? Spot{pointer_.x(), pointer_.y()} : view_.area().middle();
    setView(view_.zoomedAt(at, factor, kLeast, kMost));
}

void LightTable::showTrueSize() {
    const plan::SheetPtr sheet = firstSheet(work_.plan());
    const double pixelsPerMm = physicalDpiX() > 0 ? physicalDpiX() / 25.4 : kPixelsPerMm;
    setView(view_.seenAt(zoomFor(sheet ? sheet->scale : Scale{}, pixelsPerMm)));
}

void LightTable::turnTo(Degrees up) {
    setView(view_.turnedAt(view_.area().middle(), up));
}

Degrees LightTable::pageUp() const {
    const plan::SheetPtr sheet = work_.isOpen() ? firstSheet(work_.plan()) : nullptr;
    if (!sheet) {
        return Degrees(0);
    }
    const Degrees up = degrees(Radians(std::atan2(-sheet->placement.eastPerRow, -sheet->placement.northPerRow)));
    return up.value() == 0 ? Degrees(0) : up;  // no minus before a nought
}

std::optional<geodesy::PlanePoint> LightTable::inPlan(QPointF at) const {
    if (work_.grid() == nullptr) {
        return std::nullopt;
    }
    const auto place = work_.grid()->inPlan(view_.place({at.x(), at.y()}));
    return place ? std::optional(*place) : std::nullopt;
}

std::optional<geodesy::PlanePoint> LightTable::onGrid(geodesy::PlanePoint inPlan) const {
    if (work_.grid() == nullptr) {
        return std::nullopt;
    }
    const auto place = work_.grid()->onGrid(inPlan);
    return place ? std::optional(*place) : std::nullopt;
}

std::optional<Spot> LightTable::spotOf(geodesy::PlanePoint inPlan) const {
    const auto place = onGrid(inPlan);
    return place ? std::optional(view_.spot(*place)) : std::nullopt;
}

void LightTable::resizeEvent(QResizeEvent* /*event*/) {
    const Area area = insideRim(width(), height());
    if (view_.area().width <= 100) {
        view_ = view_.in(area);
        if (!laid_.empty()) {
            view_ = View::fitting(sheetsGround(laid_), area, kFitMargin, zoomFor(kClosest));
        }
    } else {  // what lay in the upper left corner stays there: a card that opens hides, it does not push
        view_ = view_.in(area).centredOn(view_.place(area.middle()));
    }
    tellSeen();
    startMoving();
}

/// Ground and films. While the view moves both are kept as one picture, so that a frame blends no film again.
void LightTable::paintTable(QPainter& painter, const RimFigures& figures, const Palette& colours) {
    const Scaling scaling = moving_ ? Scaling::Nearest : Scaling::Smooth;
    const double ratio = devicePixelRatioF();
    const bool pans = moving_ && ground_.slides(view_, ratio);
    if (!pans) {
        pannedTable_.forget();
    }
    if (moving_ && !pans) {
        return paintZooming(painter, ratio, figures, colours);
    }
    zoomedTable_.forget();
    const std::vector<QRectF> arrived = takeArrived();
    ground_.renew(view_, ratio, arrived, scaling, [&](QPainter& ground, const QRectF& part, Scaling how) {
        paintGround(ground, part, how, figures, colours);
    });
    if (!pans) {
        ground_.lay(painter);
        films_.paint(painter, view_, scaling);
        return;
    }
    if (pannedFilms_ != films_.picture().number) {
        pannedTable_.forget();
    }
    pannedFilms_ = films_.picture().number;
    pannedTable_.renew(view_, ratio, arrived, scaling, [&](QPainter& table, const QRectF& part, Scaling how) {
        ground_.lay(table, part);
        films_.paint(table, view_, how);
    });
    pannedTable_.lay(painter);
}

void LightTable::paintZooming(QPainter& painter, double ratio, const RimFigures& figures, const Palette& colours) {
    const auto paintPart = [&](QPainter& table, const QRectF& part) {
        table.save();
        table.setClipRect(part, Qt::IntersectClip);
        paintGround(table, part, Scaling::Nearest, figures, colours);
        table.restore();
        table.save();
        table.setClipRect(part, Qt::IntersectClip);
        films_.paint(table, view_, Scaling::Nearest);
        table.restore();
    };
    if (!zoomedTable_.serves(view_, ratio) || zoomedFilms_ != films_.picture().number) {
        zoomedFilms_ = films_.picture().number;
        const Area& area = view_.area();
        zoomedTable_.take(view_, ratio, [&](QPainter& table) {
            paintPart(table, QRectF(area.left, area.top, area.width, area.height));
        });
    }
    for (const QRectF& part : zoomedTable_.lay(painter, view_)) {
        paintPart(painter, part);
    }
}

void LightTable::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    if (!hasPainted_) {
        tiles_.hear();
    }
    const Palette colours = table::palette(theme_);
    if (faces_ == nullptr) {
        painter.fillRect(rect(), colours.desk);
        return;
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const plan::SheetPtr sheet = work_.isOpen() ? firstSheet(work_.plan()) : nullptr;
    const Metres printed = film::gridInterval(sheet ? sheet->scale : Scale{});
    const RimFigures figures = rimFigures(view_, printed, kFigureRoom);
    const Area& area = view_.area();
    const QRectF inside(area.left, area.top, area.width, area.height);
    painter.save();
    painter.setClipRect(inside);
    paintTable(painter, figures, colours);
    if (!only_ && work_.workingFilm() && work_.isSeen(*work_.workingFilm())) {
        const auto& stack = work_.plan().films();
        const auto place = std::find_if(stack.begin(), stack.end(),
                                        [this](const plan::FilmPtr& film) { return film->id == *work_.workingFilm(); });
        paintFilmEdge(painter, view_, films_.picture().windowGround, static_cast<int>(place - stack.begin()) + 1,
                      colours);
    }
    if (work_.isOpen() && !only_) {
        const geodesy::PlanePoint looked = view_.place({pointer_.x(), pointer_.y()});
        CornerRows rows = cornerRows(work_.plan(), view_, scene_ ? scene_->pens : symbols::PenMode::Colour);
        if (pointerInside_) {
            rows.first = placeWords(work_, looked);
        }
        paintCornerBlock(painter, view_, rows, *faces_, colours);
        paintComing(painter, colours);
    }
    painter.restore();
    paintRim(painter, view_, figures, *faces_, colours);
    painter.save();
    painter.setClipRect(QRectF(0, 0, area.right(), area.bottom()));
    if (!only_) {
        paintOverlay(painter, colours);
    }
    painter.restore();
    hasPainted_ = work_.isOpen() && (!sheet || tiles_.hasAny() || work_.sheetGrounds().hasFault());
}

}  // namespace crosstick::table
