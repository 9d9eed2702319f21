#include "ui/table/film_layer.h"

#include <cmath>

#include <QPainter>

namespace crosstick::table {
namespace {

GridBox groundOf(const FilmInk& film) {
    const drawing::Box window = film.frame.window();
    return {film.frame.filmToGrid({window.left, window.bottom}), film.frame.filmToGrid({window.right, window.top})};
}

/// One film by itself where it is faded, so that its overlaps do not add up.
void paintFaded(QPainter& painter, const View& view, const FilmInk& film, const press::Brushes& brushes,
                double strength, const QImage& under) {
    QImage one(under.size(), QImage::Format_ARGB32_Premultiplied);
    one.setDevicePixelRatio(under.devicePixelRatio());
    one.fill(Qt::transparent);
    {
        QPainter own(&one);
        own.setRenderHint(QPainter::Antialiasing);
        paintFilm(own, view, film, brushes);
    }
    painter.setOpacity(strength);
    painter.drawImage(QPointF(0, 0), one);
    painter.setOpacity(1);
}

}  // namespace

void FilmWorker::make(const FilmOrder& order) {
    if (!faces_) {
        auto faces = press::Faces::open(share_ / "faces");
        if (!faces) {
            Q_EMIT failed(QString::fromStdString(std::string(faces.error().fault.name)));
            return;
        }
        faces_.emplace(std::move(*faces));
    }
    if (order.scene != scene_) {
        auto ink = inkFilms(*order.scene);
        if (!ink) {
            Q_EMIT failed(QString::fromStdString(std::string(ink.error().fault.name)));
            return;
        }
        ink_ = std::move(*ink);
        scene_ = order.scene;
    }
    FilmPicture picture;
    picture.number = order.number;
    picture.ground = inkedGround(ink_);
    if (!ink_.empty() && !ink_.back().frame.window().isEmpty()) {
        picture.windowGround = groundOf(ink_.back());
    }
    if (order.view) {
        const Area& area = order.view->area();
        picture.view = order.view;
        picture.image =
            QImage(static_cast<int>(std::ceil(area.width * order.deviceRatio)),
                   static_cast<int>(std::ceil(area.height * order.deviceRatio)), QImage::Format_ARGB32_Premultiplied);
        picture.image.setDevicePixelRatio(order.deviceRatio);
        picture.image.fill(Qt::transparent);
        QPainter painter(&picture.image);
        painter.setRenderHint(QPainter::Antialiasing);
        const press::Brushes brushes{*faces_, palette(order.theme).pens, press::Letters::AsOutlines,
                                     press::HaloRule::Painted};
        for (const FilmInk& film : ink_) {
            const auto strength = order.strengths.find(film.film->id);
            if (strength != order.strengths.end() && strength->second < 1) {
                paintFaded(painter, *order.view, film, brushes, strength->second, picture.image);
            } else {
                paintFilm(painter, *order.view, film, brushes);
            }
        }
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

void FilmLayer::paint(QPainter& painter, const View& view, Scaling scaling) const {
    if (!picture_.view || picture_.image.isNull()) {
        return;
    }
    const View& shown = *picture_.view;
    const Spot corner = view.spot(shown.place({0, 0}));
    const double factor = view.zoom() / shown.zoom();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, scaling == Scaling::Smooth);
    if (factor == 1) {  // whole pixels: the picture goes to the screen as it is
        const double ratio = picture_.image.devicePixelRatio();
        painter.drawImage(QPointF(std::round(corner.x * ratio) / ratio, std::round(corner.y * ratio) / ratio),
                          picture_.image);
    } else {
        painter.translate(corner.x, corner.y);
        painter.scale(factor, factor);
        painter.drawImage(QPointF(0, 0), picture_.image);
    }
    painter.restore();
}

}  // namespace crosstick::table
