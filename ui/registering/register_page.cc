#include "ui/registering/register_page.h"

#include <cmath>

#include <QKeyEvent>
#include <QPainter>
#include <QPointer>

#include "core/film/registration.h"
#include "core/registration/figures.h"
#include "core/registration/registered_sheet.h"

namespace crosstick::registering {
namespace {

using registration::PixelPoint;
using work::Course;
using work::GivingUp;
using work::Lane;

constexpr std::size_t kEnoughToFind = 3;
constexpr double kHandReach = 14;  // logical pixels beside a crossing that a click still means
constexpr std::size_t kMostPassed = 24;

QString text(const std::string& utf8) {
    return QString::fromStdString(utf8);
}

}  // namespace

RegisterPage::RegisterPage(work::Errands& errands, const sheets::ForeignReader& reader, Say say,
                           const press::Faces* faces, QWidget* parent)
    : QWidget(parent),
      errands_(errands),
      reader_(reader),
      say_(std::move(say)),
      ground_(errands, reader_),
      marks_(std::make_unique<registration::Registering>(0, 0)) {
    setAccessibleName(tr("Register a scan"));
    search_ = new PictureSearch(errands, this);
    canvas_ = new PictureCanvas(marks_.get(), faces, this);
    buildCard();
    connectParts();
}

RegisterPage::~RegisterPage() = default;

void RegisterPage::connectParts() {
    connect(search_, &PictureSearch::changed, this, &RegisterPage::renew);
    connect(&ground_, &work::SheetGround::changed, this, &RegisterPage::showGround);
    connect(canvas_, &PictureCanvas::broken, &ground_, &work::SheetGround::copyIsDamaged);
    connect(canvas_, &PictureCanvas::pointed, this, [this](double x, double y) { point({x, y}); });
    connect(canvas_, &PictureCanvas::markPointed, this, &RegisterPage::hold);
    connect(canvas_, &PictureCanvas::crossingPointed, this, [this](std::size_t crossing) {
        marks_->use(crossing, !marks_->crossings()[crossing].isUsed);
        renew();
    });
    connect(canvas_, &PictureCanvas::nudged, this, &RegisterPage::nudge);
    for (QLineEdit* field : {square_, crs_, scale_}) {
        connect(field, &QLineEdit::editingFinished, this, &RegisterPage::takeCollar);
    }
    connect(entry_, &QLineEdit::returnPressed, this, &RegisterPage::takeEntry);
    connect(scale_, &QLineEdit::returnPressed, this, [this] {
        if (std::exchange(wantsScale_, false)) {  // it was all that was missing
            lay();
        }
    });
    entry_->installEventFilter(this);
    connect(list_, &QTreeWidget::itemClicked, this,
            [this](QTreeWidgetItem* item) { hold(static_cast<std::size_t>(list_->indexOfTopLevelItem(item))); });
    list_->installEventFilter(this);
    connect(find_, &QPushButton::clicked, this, &RegisterPage::find);
    connect(howButton_, &QPushButton::toggled, this, [this](bool shown) {
        canvas_->setArrows(shown);
        renew();
    });
    connect(lay_, &QPushButton::clicked, this, &RegisterPage::lay);
}

void RegisterPage::open(const std::filesystem::path& file, const sheets::FileReport& report,
                        const sheets::GivenFacts& given, const Uuid& newId, const std::vector<plan::GridMark>& marks) {
    ++round_;
    search_->begin();
    file_ = file;
    report_ = report;
    id_ = newId;
    marks_ = std::make_unique<registration::Registering>(report.columns, report.rows);
    canvas_->setWork(marks_.get());
    moved_.reset();
    proposal_ = 0;
    wantsScale_ = false;
    isProposed_ = false;
    howButton_->setChecked(false);
    fits_->setChecked(false);
    canvas_->setPending(std::nullopt);
    entry_->clear();
    refusal_->clear();
    square_->clear();
    const std::string& crs = given.crs.empty() ? report.crs : given.crs;
    crs_->setText(crs.rfind("EPSG:", 0) == 0 ? text(crs.substr(5)) : QString());
    scale_->setText(given.scale ? QString::number(given.scale->denominator, 'f', 0) : QString());
    title_->setText(text(file.filename().string()));
    takeCollar();
    if (auto taken = marks_->takeUp(marks); !taken) {
        refusal_->setText(say_(taken.error()));
    }
    auto sheet = std::make_shared<plan::Sheet>();
    sheet->path = std::filesystem::absolute(file).string();
    sheet->columns = report.columns;
    sheet->rows = report.rows;
    ground_.lay(nullptr, {}, {});
    ground_.lay(sheet, {}, [](const std::string& path) { return std::filesystem::path(path); });
    renew();
    canvas_->setFocus();
}

void RegisterPage::showGround() {
    search_->setCopy(ground_.copy());
    canvas_->show({ground_.copy(), ground_.glance(), {report_.columns, report_.rows}}, light_);
    if (const auto& fault = ground_.fault()) {
        refusal_->setText(say_(*fault));
    }
    renewWords();
}

std::optional<Scale> RegisterPage::scale() const {
    return marks_->collar().scale;
}

/// What the collar's fields say now; a field that cannot be says why, and the last good words hold.
void RegisterPage::takeCollar() {
    registration::Collar collar;
    collar.square = square_->text().trimmed().toStdString();
    QString grid = crs_->text().trimmed();
    grid.remove(QStringLiteral("EPSG:"), Qt::CaseInsensitive);
    collar.crs = grid.isEmpty() ? std::string() : "EPSG:" + grid.toStdString();
    QString number = scale_->text();
    number.remove(QLatin1Char(' ')).remove(QLatin1Char(',')).remove(QStringLiteral("1:"));
    bool isNumber = false;
    if (const double denominator = number.toDouble(&isNumber); isNumber && denominator >= 500 && denominator <= 1e7) {
        collar.scale = Scale{denominator};
    }
    if (collar.square == marks_->collar().square && collar.crs == marks_->collar().crs &&
        collar.scale == marks_->collar().scale) {
        return;
    }
    const auto taken = marks_->setCollar(std::move(collar));
    refusal_->setText(taken ? QString() : say_(taken.error()));
    renew();
}

void RegisterPage::point(PixelPoint at) {
    wantsScale_ = false;
    if (moved_) {  // a mark in hand goes where the hand points
        marks_->move(*moved_, at);
        canvas_->setPending(at);
        snap(at, kHandReach / canvas_->pixelsOnScreen());
        return renew();
    }
    isProposed_ = false;
    pointAt(at);
    entry_->clear();
    snap(at, std::clamp(kHandReach / canvas_->pixelsOnScreen(), 4.0, 80.0));
}

void RegisterPage::pointAt(PixelPoint at) {
    canvas_->setPending(at);
    refusal_->clear();
    renewWords();
    entry_->setFocus();
    entry_->selectAll();
}

/// One interval of the lines near a place, as far as it is known: by the fit, by the scan's dots, or by guess.
registration::CrossSight RegisterPage::sightAt(PixelPoint at) const {
    const auto interval = marks_->interval();
    if (marks_->fit() && interval) {
        const registration::PixelStep step = marks_->fit()->model.stepAt(at);
        return {at, step.pixels(*interval, Metres(0)), step.pixels(Metres(0), *interval)};
    }
    double spacing = std::min(report_.columns, report_.rows) / 12.0;
    if (scale() && report_.dotsPerMetre) {
        spacing = film::gridInterval(*scale()).value() / scale()->denominator * *report_.dotsPerMetre;
    }
    return {at, {spacing, 0}, {0, -spacing}};
}

/// Sets the pending spot on the crossing that is printed near it, if there is one.
void RegisterPage::snap(PixelPoint at, double reach) {
    if (!search_->hasCopy()) {
        return;
    }
    search_->crossingAt(sightAt(at), reach, [this, at](PixelPoint found) {
        if (!canvas_->pending() || !(*canvas_->pending() == at)) {
            return;  // the hand has gone on
        }
        canvas_->setPending(found);
        if (moved_) {
            marks_->move(*moved_, found);
        }
        renew();
    });
}

/// The name in the entry belongs to the pending spot; the next mark is proposed then.
void RegisterPage::takeEntry() {
    if (moved_) {
        drop();
        return propose();
    }
    if (!canvas_->pending()) {
        return;
    }
    takeCollar();
    const auto added = marks_->add(*canvas_->pending(), entry_->text().trimmed().toStdString());
    if (!added) {
        refusal_->setText(say_(added.error()));
        return;
    }
    proposal_ = 0;
    drop();
    propose();
}

/// Lays down whatever is in hand.
void RegisterPage::drop() {
    moved_.reset();
    isProposed_ = false;
    canvas_->setPending(std::nullopt);
    entry_->clear();
    refusal_->clear();
    renew();
}

/// Looks for the best place of the next mark that really shows a crossing.
void RegisterPage::propose() {
    if (marks_->marks().size() < 2 || !search_->hasCopy() || !marks_->crossings().empty()) {
        return renew();
    }
    PictureSearch::Candidates candidates;
    for (std::size_t n = proposal_; n < proposal_ + kMostPassed; ++n) {
        if (auto next = marks_->proposal(n)) {
            candidates.emplace_back(*next, sightAt(next->at));
        }
    }
    search_->next(std::move(candidates), [this](const std::optional<PictureSearch::Next>& found) {
        if (found && !canvas_->pending()) {
            proposal_ += found->passed;
            isProposed_ = true;
            canvas_->lookAt(found->proposal.at);
            entry_->setText(text(found->proposal.printed));
            pointAt(found->proposal.at);
        }
        renew();
    });
}

void RegisterPage::nudge(double right, double down) {
    if (const auto at = canvas_->pending()) {
        const PixelPoint to{at->x + right, at->y + down};
        canvas_->setPending(to);
        if (moved_) {
            marks_->move(*moved_, to);
            renew();
        }
    }
}

/// Takes a mark in hand: arrows and a click move it, Delete takes it off.
void RegisterPage::hold(std::size_t mark) {
    if (mark >= marks_->marks().size()) {
        return;
    }
    moved_ = mark;
    isProposed_ = false;
    canvas_->setPending(marks_->marks()[mark].at);
    canvas_->lookAt(marks_->marks()[mark].at);
    entry_->setText(text(marks_->marks()[mark].printed));
    refusal_->clear();
    canvas_->setFocus();
    renew();
}

void RegisterPage::removeHeld() {
    if (moved_) {
        marks_->remove(*moved_);
        drop();
    }
}

void RegisterPage::find() {
    if (marks_->marks().size() < kEnoughToFind || !search_->hasCopy()) {
        return;
    }
    drop();
    std::vector<registration::Mark> set;
    for (const registration::NamedMark& mark : marks_->marks()) {
        set.push_back({mark.at, mark.place});
    }
    search_->all(std::move(set), [this](const Result<registration::FoundFit>& found) {
        if (found) {
            marks_->take(found->crossings);
            canvas_->fit();
        }
        renew();
        refusal_->setText(!found                     ? say_(found.error())
                          : found->crossings.empty() ? tr("No lines of a grid were found round the marks.")
                                                     : QString());
    });
}

bool RegisterPage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const double step = key->modifiers().testFlag(Qt::ShiftModifier) ? 5 : 0.5;
        const bool isFree = watched == entry_ && (entry_->text().isEmpty() || entry_->selectedText() == entry_->text());
        switch (key->key()) {
            case Qt::Key_Up:
            case Qt::Key_Down:
                if (watched == entry_) {
                    nudge(0, key->key() == Qt::Key_Up ? -step : step);
                    return true;
                }
                break;
            case Qt::Key_Left:
            case Qt::Key_Right:
                if (isFree) {
                    nudge(key->key() == Qt::Key_Left ? -step : step, 0);
                    return true;
                }
                break;
            case Qt::Key_Tab:
                if (watched == entry_ && isProposed_) {
                    ++proposal_;
                    drop();
                    propose();
                    return true;
                }
                break;
            case Qt::Key_Delete:
                if (watched == list_) {
                    removeHeld();
                    return true;
                }
                break;
            default:
                break;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void RegisterPage::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Escape:
            canvas_->pending() ? drop() : Q_EMIT left();
            return;
        case Qt::Key_Delete:
            return removeHeld();
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return takeEntry();
        default:
            QWidget::keyPressEvent(event);
    }
}

/// As its six numbers say, or straightened into a file of its own where no six numbers do.
void RegisterPage::lay() {
    takeCollar();
    if (!marks_->fit()) {
        return;
    }
    const auto scale = registration::scaleOf(report_, marks_->fit()->model, marks_->crs(), this->scale());
    if (!scale) {
        refusal_->setText(tr("Its scale is missing. Type it as the sheet prints it; Enter lays the sheet then."));
        wantsScale_ = true;
        scale_->setFocus();
        return;
    }
    if (!marks_->fit()->model.placement()) {
        return layStraightened(scale);
    }
    auto sheet = registration::registeredSheet(report_, file_, id_, marks_->fit()->model, marks_->crs(), scale);
    if (!sheet) {
        refusal_->setText(say_(sheet.error()));
        return;
    }
    const QPointer<RegisterPage> self(this);
    errands_.run(
        Lane::Makings, tr("Reading %1").arg(title_->text()), GivingUp::Allowed,
        [file = file_](Course&) { return sheets::fileSha256(file); },
        [self, sheet = *sheet, round = round_](const Result<std::string>& sum) mutable {
            if (!self || round != self->round_) {
                return;
            }
            if (!sum) {
                return self->refusal_->setText(self->say_(sum.error()));
            }
            sheet.sha256 = *sum;
            sheet.marks = self->marks_->kept();
            std::error_code ignored;
            sheet.bytes = static_cast<std::int64_t>(std::filesystem::file_size(self->file_, ignored));
            Q_EMIT self->laid(self->file_, self->chosen(sheet));
        });
}

}  // namespace crosstick::registering
