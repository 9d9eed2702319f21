// The card beside the scan: the collar's words, what to do next, the proof.
#include <algorithm>
#include <array>
#include <cmath>

#include <QFileDialog>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLocale>
#include <QPainter>
#include <QPointer>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/registration/figures.h"
#include "core/registration/placed_sheet.h"
#include "ui/registering/register_page.h"

namespace crosstick::registering {
namespace {

using work::Course;
using work::GivingUp;
using work::Lane;

constexpr int kCardWide = 320;

QString number(double value, int places) {
    return QLocale::c().toString(value, 'f', places);
}

QLabel* words(const QString& text, int size, look::Weight weight, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setFont(look::face(size, weight));
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    return label;
}

QLineEdit* field(QFormLayout* form, const QString& name, const QString& example, const QString& whole,
                 QWidget* parent) {
    auto* made = new QLineEdit(parent);
    made->setAccessibleName(whole);
    made->setToolTip(whole);
    made->setPlaceholderText(example);
    form->addRow(words(name, 12, look::Weight::Regular, parent), made);
    return made;
}

QPushButton* button(QBoxLayout* rows, const QString& name, QWidget* parent) {
    auto* made = new QPushButton(name, parent);
    made->setAccessibleName(name);
    rows->addWidget(made);
    return made;
}

QString kindWord(registration::Kind kind) {
    return QString::fromLatin1(registration::nameOf(kind));
}

}  // namespace

/// The collar's words: a name and a field a row.
void RegisterPage::buildCollar(QBoxLayout* rows) {
    rows->addWidget(words(tr("As the sheet's collar prints it"), 12, look::Weight::Bold, card_));
    auto* form = new QFormLayout;
    form->setHorizontalSpacing(10);
    form->setVerticalSpacing(5);
    rows->addLayout(form);
    square_ = field(form, tr("Zone and square"), tr("25T FL"), tr("Grid zone designation and 100 km square"), card_);
    crs_ = field(form, tr("Its grid"), tr("UTM on WGS 84, or 26705"),
                 tr("Its grid by EPSG number; none where it is UTM on WGS 84"), card_);
    scale_ = field(form, tr("Scale, 1 to"), tr("25000"), tr("The number under the 1 of its scale"), card_);
}

/// What is told and done stays in its place, whatever stands above it.
void RegisterPage::buildFoot(QBoxLayout* rows) {
    proof_ = words({}, 14, look::Weight::Bold, card_);
    rows->addWidget(proof_);
    squares_ = words({}, 12, look::Weight::Bold, card_);
    rows->addWidget(squares_);
    find_ = button(rows, tr("Find the other crossings"), card_);
    howButton_ = button(rows, tr("How good, and how that is known"), card_);
    howButton_->setCheckable(true);
    fits_ = button(rows, {}, card_);
    fits_->setCheckable(true);
    film_ = button(rows, tr("It is somebody's film: lay it see-through"), card_);
    film_->setCheckable(true);
    lay_ = button(rows, tr("Lay it on the table"), card_);
    auto* away = button(rows, tr("Leave it"), card_);
    connect(away, &QPushButton::clicked, this, &RegisterPage::left);
}

void RegisterPage::buildCard() {
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(0);
    across->addWidget(canvas_, 1);
    card_ = new QWidget(this);
    card_->setFixedWidth(kCardWide);
    across->addWidget(card_);
    auto* rows = new QVBoxLayout(card_);
    rows->setContentsMargins(16, 12, 16, 12);
    rows->setSpacing(6);
    title_ = words({}, 15, look::Weight::Bold, card_);
    rows->addWidget(title_);
    buildCollar(rows);
    rows->addSpacing(6);
    asked_ = words({}, 13, look::Weight::Bold, card_);
    asked_->setMinimumHeight(54);
    asked_->setAlignment(Qt::AlignLeft | Qt::AlignBottom);
    rows->addWidget(asked_);
    entry_ = new QLineEdit(card_);
    entry_->setAccessibleName(tr("What the map prints there"));
    entry_->setPlaceholderText(tr("45 62, or a full grid, or lat long"));
    rows->addWidget(entry_);
    refusal_ = words({}, 12, look::Weight::Bold, card_);
    rows->addWidget(refusal_);
    list_ = new QTreeWidget(card_);
    list_->setAccessibleName(tr("Marks"));
    list_->setRootIsDecorated(false);
    list_->setUniformRowHeights(true);
    list_->setHeaderLabels({tr("Mark"), tr("off px"), tr("mm"), tr("m")});
    list_->setMinimumHeight(90);
    list_->header()->setStretchLastSection(false);
    list_->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    list_->header()->setSectionResizeMode(0, QHeaderView::Stretch);
    rows->addWidget(list_, 1);
    auto* scroll = new QScrollArea(card_);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    how_ = words({}, 12, look::Weight::Regular, scroll);
    how_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    scroll->setWidget(how_);
    scroll->setVisible(false);
    rows->addWidget(scroll, 2);
    buildFoot(rows);
    connect(howButton_, &QPushButton::toggled, scroll, &QWidget::setVisible);
}

void RegisterPage::setLight(look::Light light) {
    light_ = light;
    const look::Colours c = look::colours(light);
    QPalette p = palette();
    p.setColor(QPalette::Window, c.card);
    p.setColor(QPalette::WindowText, c.ink);
    card_->setPalette(p);
    QPalette refused = p;
    refused.setColor(QPalette::WindowText, c.error);
    refusal_->setPalette(refused);
    canvas_->setLight(light);
}

void RegisterPage::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.fillRect(rect(), look::colours(light_).lino);
    painter.fillRect(card_->geometry(), look::colours(light_).card);
}

void RegisterPage::renew() {
    renewList();
    renewWords();
    canvas_->renew();
}

void RegisterPage::renewList() {
    list_->clear();
    const auto& fit = marks_->fit();
    const auto scale = this->scale();
    for (std::size_t n = 0; n < marks_->marks().size(); ++n) {
        const registration::NamedMark& mark = marks_->marks()[n];
        constexpr std::size_t kLongestFigures = 11;  // "12345 67890"; metres are longer, and need no square
        const bool isBare = mark.printed.size() <= kLongestFigures &&
                            mark.printed.find_first_not_of("0123456789 ") == std::string::npos;
        const std::string square = isBare ? registration::squareOf(mark.place, marks_->crs()) : std::string();
        QStringList columns{QStringLiteral("%1  %2").arg(n + 1).arg(
            QString::fromStdString(square.empty() ? mark.printed : square + ' ' + mark.printed))};
        if (fit) {
            const registration::Residual& residual = fit->residuals[n];
            columns << number(residual.size(), 2)
                    << (scale ? number(residual.ground().value() / scale->denominator * 1000, 2) : QString())
                    << number(residual.ground().value(), 1);
            if (residual.isBlunder) {
                columns[0] += tr("  blunder, left out");
            }
        }
        auto* row = new QTreeWidgetItem(list_, columns);
        for (int column = 1; column < 4; ++column) {
            row->setTextAlignment(column, Qt::AlignRight | Qt::AlignVCenter);
        }
        if (moved_ == n) {
            list_->setCurrentItem(row);
        }
    }
}

void RegisterPage::renewWords() {
    const std::size_t count = marks_->marks().size();
    const QString next = QString::number(count + 1);
    if (ground_.isReading() && ground_.copy().empty()) {
        asked_->setText(tr("The picture is being read."));
    } else if (moved_) {
        asked_->setText(
            tr("Mark %1 in hand: arrows or a click move it, Del takes it off, Enter lays it down.").arg(*moved_ + 1));
    } else if (canvas_->pending() && isProposed_) {
        asked_->setText(tr("Mark %1 is proposed. Does the map print this here? Enter takes it, arrows nudge it, Tab "
                           "proposes another.")
                            .arg(next));
    } else if (canvas_->pending()) {
        asked_->setText(tr("What does the map print at this crossing?"));
    } else if (search_->isOn()) {
        asked_->setText(tr("Looking at the picture."));
    } else if (!marks_->crossings().empty()) {
        const auto used = std::count_if(marks_->crossings().begin(), marks_->crossings().end(),
                                        [](const registration::FoundCrossing& found) { return found.isUsed; });
        asked_->setText(tr("%1 crossings found and used, %2 unsure (rings). A click uses one or leaves it out.")
                            .arg(used)
                            .arg(static_cast<std::ptrdiff_t>(marks_->crossings().size()) - used));
    } else {
        asked_->setText(tr("Click crossing %1 of the printed grid%2.")
                            .arg(next, count == 0 ? tr(", near a corner of the map") : QString()));
    }
    squares_->setText(squaresWords());
    squares_->setVisible(!squares_->text().isEmpty());
    find_->setEnabled(count >= 3 && search_->hasCopy() && !search_->isOn());
    lay_->setEnabled(marks_->fit().has_value());
    howButton_->setEnabled(marks_->fit().has_value());
    const auto paper = stretch();
    fits_->setVisible(paper.has_value());
    if (paper) {
        const QString words = tr("Print films to fit this paper: E %1 %, N %2 %")
                                  .arg(number(paper->eastPercent, 2), number(paper->northPercent, 2));
        fits_->setText(words);
        fits_->setAccessibleName(words);
    }
    if (!marks_->fit()) {
        proof_->setText(count < 2 ? QString() : say_(marks_->fit().error()));
        how_->clear();
        return;
    }
    const registration::Fit& fit = *marks_->fit();
    const registration::Proof proof = registration::proofOf(fit, scale());
    const auto interval = marks_->interval();
    const auto all = marks_->all();
    const std::string crossing = interval && proof.worst < all.size()
                                     ? registration::printedName(all[proof.worst].place, *interval)
                                     : std::string();
    proof_->setText(QString::fromStdString(registration::proofText(fit, proof, marks_->marks().size(), crossing)));
    how_->setText(howButton_->isChecked() ? howWords() : QString());
}

/// Figures alone repeat every 100 km: marks that came out in several squares are to be looked at.
QString RegisterPage::squaresWords() const {
    QStringList squares;
    for (const registration::NamedMark& mark : marks_->marks()) {
        const QString square = QString::fromStdString(registration::squareOf(mark.place, marks_->crs()));
        if (!square.isEmpty() && !squares.contains(square)) {
            squares.push_back(square);
        }
    }
    return squares.size() < 2 ? QString()
                              : tr("The marks lie in squares %1. If the sheet prints others, correct the square above.")
                                    .arg(squares.join(tr(" and ")));
}

void RegisterPage::setPurpose(Purpose purpose) {
    film_->setVisible(purpose == Purpose::JoinsAPlan);
    film_->setChecked(false);
}

plan::Sheet RegisterPage::chosen(plan::Sheet sheet) const {
    if (fits_->isVisible() && fits_->isChecked()) {
        sheet.stretch = stretch();
    }
    if (film_->isChecked()) {
        sheet.asFilm = 1;
    }
    return sheet;
}

std::optional<plan::PaperStretch> RegisterPage::stretch() const {
    constexpr double kSeen = 0.03;  // per cent: 0.1 mm on a sheet's width
    if (!marks_->fit()) {
        return std::nullopt;
    }
    const auto figures = registration::figuresOf(marks_->fit()->model, {report_.columns / 2.0, report_.rows / 2.0},
                                                 scale(), report_.dotsPerMetre);
    const bool isSeen = std::max(std::abs(figures.stretchEast), std::abs(figures.stretchNorth)) >= kSeen;
    return figures.isAbsolute && isSeen ? std::optional(plan::PaperStretch{figures.stretchEast, figures.stretchNorth})
                                        : std::nullopt;
}

/// The two marks farthest apart, as a ruler on the paper would find them.
QString RegisterPage::rulerWords() const {
    const auto& marks = marks_->marks();
    std::array<std::size_t, 2> ends{};
    double longest = 0;
    for (std::size_t a = 0; a < marks.size(); ++a) {
        for (std::size_t b = a + 1; b < marks.size(); ++b) {
            const double metres = std::hypot((marks[a].place.easting - marks[b].place.easting).value(),
                                             (marks[a].place.northing - marks[b].place.northing).value());
            if (metres > longest) {
                longest = metres;
                ends = {a, b};
            }
        }
    }
    if (!scale() || longest <= 0) {
        return {};
    }
    return tr("With a ruler: from mark %1 to mark %2 the grid makes %3 mm on paper; measure them on yours.\n")
        .arg(ends[0] + 1)
        .arg(ends[1] + 1)
        .arg(number(longest / scale()->denominator * 1000, 1));
}

QString RegisterPage::howWords() const {
    const registration::Fit& fit = *marks_->fit();
    const auto figures =
        registration::figuresOf(fit.model, {report_.columns / 2.0, report_.rows / 2.0}, scale(), report_.dotsPerMetre);
    QString how = rulerWords();
    how += tr("Model: %1. Rms %2 px = %3 m.\n")
               .arg(kindWord(fit.model.kind()), number(fit.rmsPixels, 2), number(fit.rmsGround.value(), 1));
    if (fit.leaveOneOut) {
        how += tr("Each mark by the others alone: rms %1 m.\n").arg(number(fit.leaveOneOut->value(), 1));
    }
    how += tr("Stretch %1 % east, %2 % north%3. Rotation %4\u00b0, skew %5\u00b0.\n")
               .arg(number(figures.stretchEast, 2), number(figures.stretchNorth, 2),
                    figures.isAbsolute ? QString() : tr(", one against the other"), number(figures.rotation.value(), 2),
                    number(figures.skew.value(), 2));
    for (const registration::Candidate& candidate : fit.candidates) {
        how += tr("%1: rms %2 px%3\n")
                   .arg(kindWord(candidate.kind), number(candidate.rmsPixels, 2),
                        candidate.bic ? tr(", BIC %1").arg(number(*candidate.bic, 1)) : QString());
    }
    if (fit.choice == registration::Choice::CannotTell && fit.runnerUp) {
        how += tr("%1 comes too close to tell: add marks at the corners.\n").arg(kindWord(fit.runnerUp->kind));
    }
    return how + tr("Arrows on the picture show where each mark would lie, much enlarged.");
}

/// No six numbers tell this model: the picture is straightened into a file that the leader names.
void RegisterPage::layStraightened(std::optional<Scale> scale) {
    const QString beside =
        QString::fromStdString((file_.parent_path() / (file_.stem().string() + " straight.tif")).string());
    const QString chosen =
        QFileDialog::getSaveFileName(this, tr("Write the straightened sheet"), beside, tr("GeoTIFF (*.tif)"));
    if (chosen.isEmpty()) {
        return;
    }
    const std::filesystem::path out = chosen.toStdString();
    const QPointer<RegisterPage> self(this);
    errands_.run(
        Lane::Makings, tr("Straightening the sheet"), GivingUp::Allowed,
        [copy = ground_.copy(), model = marks_->fit()->model, crs = marks_->crs(), scale, out, reader = reader_,
         id = id_](Course& course) {
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            watch.tell = [&course](sheets::messages::Progress progress) { course.tell(progress.done, progress.of); };
            return sheets::Raster::open(copy)
                .and_then([&](const sheets::Raster& raster) {
                    return registration::writePlaced(raster, model, crs, scale, out, watch);
                })
                .and_then([&] {
                    return sheets::describeSheet(reader, out, id, {scale, crs}, watch);
                });
        },
        [self, out, round = round_](Result<plan::Sheet> sheet) {
            if (!self || round != self->round_) {
                return;
            }
            if (!sheet) {
                return self->refusal_->setText(self->say_(sheet.error()));
            }
            Q_EMIT self->laid(out, self->chosen(std::move(*sheet)));
        });
}

}  // namespace crosstick::registering
