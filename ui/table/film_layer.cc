#include "ui/table/film_layer.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/table/behind.h"
#include "ui/table/film_coat.h"

namespace crosstick::table {
namespace {

GridBox groundOf(const FilmInk& film) {
    const drawing::Box window = film.frame.window();
    return {film.frame.filmToGrid({window.left, window.bottom}), film.frame.filmToGrid({window.right, window.top})};
}

QImage transparent(const FilmOrder& order) {
    const Area& area = order.view->area();
    QImage image(static_cast<int>(std::ceil(area.width * order.deviceRatio)),
                 static_cast<int>(std::ceil(area.height * order.deviceRatio)), QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(order.deviceRatio);
    image.fill(Qt::transparent);
    return image;
}

work::FilmLook lookOf(const FilmOrder& order, const FilmInk& film) {
    const auto look = order.looks.find(film.film->id);
    return look == order.looks.end() ? work::FilmLook{} : look->second;
}

bool isSameInk(const FilmInk& a, const FilmInk& b) {
    return a.film->id == b.film->id && a.engraved == b.engraved && a.shown == b.shown && a.covered == b.covered;
}

/// Would the films below the last come out as they lie there?
bool isStill(const Below& below, const FilmOrder& order, const std::vector<FilmInk>& films) {
    if (!below.order || below.films.size() + 1 != films.size() || !(below.order->view == order.view) ||
        below.order->deviceRatio != order.deviceRatio || below.order->theme != order.theme) {
        return false;
    }
    for (std::size_t n = 0; n < below.films.size(); ++n) {
        if (!isSameInk(below.films[n], films[n]) || !(lookOf(*below.order, films[n]) == lookOf(order, films[n]))) {
            return false;
        }
    }
    return true;
}

}  // namespace

/// The films below the last are painted anew only where they look otherwise: a hand that draws changes the last alone.
QImage FilmWorker::paintedFilms(const FilmOrder& order) {
    press::Inks inks = palette(order.theme).pens;
    if (order.scene->pens == symbols::PenMode::OnePen) {
        inks.pens.fill(inks.of(drawing::Ink::Black));
    }
    const press::Brushes brushes{*faces_, inks, press::Letters::AsOutlines, press::HaloRule::Painted, &letters_};
    if (ink_->empty()) {
        return transparent(order);
    }
    if (!isStill(below_, order, *ink_)) {
        below_ = {transparent(order), order, {ink_->begin(), ink_->end() - 1}};
        QPainter painter(&below_.image);
        painter.setRenderHint(QPainter::Antialiasing);
        for (const FilmInk& film : below_.films) {
            paintAsItLies(painter, *order.view, film, brushes, lookOf(order, film), order.theme, below_.image);
        }
    }
    QImage image = below_.image.copy();
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    paintAsItLies(painter, *order.view, ink_->back(), brushes, lookOf(order, ink_->back()), order.theme, image);
    return image;
}

void FilmWorker::make(const FilmOrder& order) {
    if (!faces_) {
        auto faces = press::Faces::open(share_ / "faces", press::Faces::WideFace::WhenNeeded);
        if (!faces) {
            Q_EMIT failed(QString::fromStdString(std::string(faces.error().fault.name)));
            return;
        }
        faces_.emplace(std::move(*faces));
    }
    if (order.scene != scene_) {
        auto ink = inker_.ink(*order.scene);
        if (!ink) {
            Q_EMIT failed(QString::fromStdString(std::string(ink.error().fault.name)));
            return;
        }
        ink_ = std::make_shared<const std::vector<FilmInk>>(std::move(*ink));
        scene_ = order.scene;
    }
    FilmPicture picture;
    picture.number = order.number;
    picture.films = ink_;
    picture.ground = inkedGround(*ink_);
    if (!ink_->empty() && !ink_->back().frame.window().isEmpty()) {
        picture.windowGround = groundOf(ink_->back());
    }
    if (order.view) {
        picture.view = order.view;
        picture.image = paintedFilms(order);
    }
    Q_EMIT made(picture);
}

FilmLayer::FilmLayer(const std::filesystem::path& share, QObject* parent)
    : QObject(parent), worker_(new FilmWorker(share)) {
    worker_->moveToThread(&thread_);
    connect(&thread_, &QThread::finished, worker_, &QObject::deleteLater);
    connect(this, &FilmLayer::wanted, worker_, &FilmWorker::make);
    connect(worker_, &FilmWorker::made, this, [this](const FilmPicture& picture) {
        isBusy_ = false;
        send();
        if (picture.number >= oldest_) {
            picture_ = picture;
            Q_EMIT changed();
        }
    });
    connect(worker_, &FilmWorker::failed, this, [this](const QString& fault) {
        isBusy_ = false;
        send();
        Q_EMIT failed(fault);
    });
    connect(&thread_, &QThread::started, worker_, &stepBehind);
    thread_.start();
}

FilmLayer::~FilmLayer() {
    thread_.quit();
    thread_.wait();
}

void FilmLayer::order(FilmOrder order) {
    order.number = ++number_;
    waiting_ = std::move(order);
    send();
}

void FilmLayer::send() {
    if (!isBusy_ && waiting_) {
        isBusy_ = true;
        const FilmOrder next = std::move(*waiting_);
        waiting_.reset();
        Q_EMIT wanted(next);
    }
}

void FilmLayer::clear() {
    waiting_.reset();
    oldest_ = number_ + 1;
    picture_ = {};
}

bool FilmLayer::covers(const View& view) const {
    if (!picture_.view) {
        return false;
    }
    const auto corners = view.corners();
    return std::all_of(corners.begin(), corners.end(), [&](Spot corner) {
        return picture_.view->area().contains(picture_.view->spot(view.place(corner)));
    });
}

void FilmLayer::paint(QPainter& painter, const View& view, Scaling scaling) const {
    if (!picture_.view || picture_.image.isNull()) {
        return;
    }
    const View& shown = *picture_.view;
    const auto lies = [&](Spot s) { return view.spot(shown.place(s)); };
    const Spot corner = lies({0, 0});
    const Spot right = lies({1, 0});
    const Spot down = lies({0, 1});
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    if (view.zoom() == shown.zoom() && view.up() == shown.up()) {  // whole pixels: the picture goes as it is
        const double ratio = picture_.image.devicePixelRatio();
        painter.drawImage(QPointF(std::round(corner.x * ratio) / ratio, std::round(corner.y * ratio) / ratio),
                          picture_.image);
    } else {
        painter.setTransform(QTransform(right.x - corner.x, right.y - corner.y, down.x - corner.x, down.y - corner.y,
                                        corner.x, corner.y),
                             true);
        painter.drawImage(QPointF(0, 0), picture_.image);
    }
    painter.restore();
}

}  // namespace crosstick::table
