#include "ui/copies/copies.h"

#include <algorithm>
#include <memory>

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/copies/queues.h"

namespace crosstick::copies {
namespace {

constexpr int kCardWide = 252;
constexpr int kMostSets = 99;
constexpr double kPixelsPerMm = 96 / 25.4;

QLabel* label(const QString& words, int size, look::Weight weight, QWidget* parent) {
    auto* made = new QLabel(words, parent);
    made->setFont(look::face(size, weight));
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    return made;
}

press::Inks inksFor(Seen seen) {
    switch (seen) {
        case Seen::OnePen:
            return press::onePenInks();
        case Seen::UnderRedLight:
            return press::underRedLight(press::paperInks());
        case Seen::OnePenUnderRedLight:
            return press::underRedLight(press::onePenInks());
        case Seen::InColour:
            break;
    }
    return press::paperInks();
}

QHBoxLayout* inOneRow(QLabel* words, QWidget* field) {
    auto* row = new QHBoxLayout;
    row->addWidget(words, 1);
    row->addWidget(field);
    return row;
}

}  // namespace

PageView::PageView(const press::Faces* faces, QWidget* parent) : QWidget(parent), faces_(faces) {
    setAccessibleName(tr("Page as it will print"));
    setMinimumSize(200, 200);
}

void PageView::show(const Sheet* sheet, look::Light light, Seen seen) {
    sheet_ = sheet;
    light_ = light;
    seen_ = seen;
    update();
}

double PageView::scale() const {
    if (sheet_ == nullptr) {
        return 1;
    }
    const double wide = sheet_->page.paper.width.value();
    const double high = sheet_->page.paper.height.value();
    return std::min((width() - 24) / wide, (height() - 24) / high) / kPixelsPerMm;
}

void PageView::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const look::Colours c = look::colours(light_);
    painter.fillRect(rect(), c.desk);
    if (sheet_ == nullptr || faces_ == nullptr) {
        return;
    }
    const double perMm = scale() * kPixelsPerMm;
    const QSizeF size(sheet_->page.paper.width.value() * perMm, sheet_->page.paper.height.value() * perMm);
    const QRectF page(QPointF(std::round((width() - size.width()) / 2), std::round((height() - size.height()) / 2)),
                      size);
    painter.fillRect(page.translated(3, 3), QColor(0, 0, 0, 71));
    const bool night = light_ == look::Light::Night;
    const press::Inks inks = night ? press::nightInks() : inksFor(seen_);
    painter.fillRect(page, night ? c.well : inks.paper);
    painter.setPen(QPen(c.edge, 1));
    painter.drawRect(page.adjusted(-0.5, -0.5, 0.5, 0.5));
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(page.topLeft());
    painter.scale(perMm, perMm);
    press::paint(painter, sheet_->page.drawing, {*faces_, inks, press::Letters::AsOutlines, press::HaloRule::LeftOut});
}

Copies::Copies(work::Work& work, std::function<QString(const Error&)> say, const press::Faces* faces,
               std::filesystem::path share, QWidget* parent)
    : QWidget(parent), work_(work), say_(std::move(say)), share_(std::move(share)) {
    setAccessibleName(tr("Copies"));
    setFocusPolicy(Qt::StrongFocus);
    auto* left = new QVBoxLayout;
    auto* head = new QHBoxLayout;
    title_ = label({}, 12, look::Weight::Bold, this);
    title_->setWordWrap(false);
    seen_ = label({}, 11, look::Weight::Regular, this);
    seen_->setWordWrap(false);
    page_ = new QComboBox(this);
    page_->setAccessibleName(tr("Page"));
    page_->setMinimumWidth(240);
    page_->setToolTip(tr("Left and Right turn the pages"));
    head->addWidget(title_, 1);
    head->addWidget(seen_);
    head->addSpacing(8);
    head->addWidget(page_);
    head->setContentsMargins(12, 8, 12, 4);
    view_ = new PageView(faces, this);
    left->addLayout(head);
    left->addWidget(view_, 1);
    left->setContentsMargins(0, 0, 0, 0);
    auto* card = new QWidget(this);
    card->setObjectName(QStringLiteral("copiesCard"));
    card->setFixedWidth(kCardWide);
    card->setAutoFillBackground(true);
    fillCard(card);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);
    row->addLayout(left, 1);
    row->addWidget(card);
    listen();
}

void Copies::fillCard(QWidget* card) {
    auto* column = new QVBoxLayout(card);
    column->setContentsMargins(12, 12, 12, 12);
    column->setSpacing(6);
    column->addWidget(label(tr("Make the copies"), 15, look::Weight::Bold, card));
    summary_ = label({}, 12, look::Weight::Regular, card);
    column->addWidget(summary_);
    column->addSpacing(10);
    column->addWidget(label(tr("Paper of the films"), 11, look::Weight::Regular, card));
    paper_ = new QComboBox(card);
    paper_->setAccessibleName(tr("Paper of the films"));
    for (const auto& [words, name] : {std::pair(tr("the smallest of A4 and A3"), ""), std::pair(tr("A4"), "a4"),
                                      std::pair(tr("A3"), "a3"), std::pair(tr("Letter"), "letter")}) {
        paper_->addItem(words, QString::fromLatin1(name));
    }
    column->addWidget(paper_);
    onePen_ = new QPushButton(tr("One pen, all black"), card);
    wholeLegend_ = new QPushButton(tr("Legend of everything"), card);
    redLight_ = new QPushButton(tr("Look at it under red light"), card);
    onePen_->setToolTip(tr("Everything in one black pen. M"));
    wholeLegend_->setToolTip(tr("Explains standard signs too, for readers who do not know them"));
    redLight_->setToolTip(tr("Shows what a red lamp leaves to be seen. D"));
    for (QPushButton* way : {onePen_, wholeLegend_, redLight_}) {
        way->setCheckable(true);
        column->addWidget(way);
    }
    onePen_->setChecked(work_.pens() == work::Pens::One);
    column->addSpacing(4);
    papers_ = new PapersChoice(card);
    column->addWidget(papers_);
    column->addSpacing(10);
    column->addWidget(label(tr("Before you print"), 12, look::Weight::Bold, card));
    notes_ = label({}, 12, look::Weight::Regular, card);
    column->addWidget(notes_);
    column->addStretch(1);
    column->addWidget(label(tr("Printer"), 11, look::Weight::Regular, card));
    printer_ = new QComboBox(card);
    printer_->setAccessibleName(tr("Printer"));
    column->addWidget(printer_);
    sets_ = new QSpinBox(card);
    sets_->setRange(1, kMostSets);
    sets_->setAccessibleName(tr("Sets of films and cards"));
    sets_->setToolTip(tr("One set for each who gets one; each is printed whole before the next."));
    sets_->findChild<QLineEdit*>()->installEventFilter(this);
    column->addLayout(inOneRow(label(tr("Sets, one for each who gets one"), 11, look::Weight::Regular, card), sets_));
    print_ = new QPushButton(tr("Print films and cards"), card);
    save_ = new QPushButton(tr("Save as PDF"), card);
    save_->setProperty("main", true);
    back_ = new QPushButton(tr("Back to the table, Esc"), card);
    giveOut_ = new QCheckBox(tr("Given out: their numbers stay"), card);
    giveOut_->setToolTip(
        tr("Once they are printed or saved, another number on the plan would make these papers wrong."));
    column->addWidget(giveOut_);
    save_->setToolTip(tr("Films and cards in two files, at true size. Ctrl+E writes them beside the plan."));
    back_->setToolTip(tr("Esc, or Ctrl+P again"));
    for (QPushButton* button : {print_, save_, back_}) {
        column->addWidget(button);
    }
    column->addWidget(label(tr("Nothing in violet is ever printed. Print at 100 %, then measure the 100 mm bars."), 11,
                            look::Weight::Regular, card));
}

void Copies::listen() {
    connect(page_, &QComboBox::activated, this, [this](int index) {
        at_ = index;
        showPage();
    });
    connect(paper_, &QComboBox::activated, this, [this] { open(); });
    connect(onePen_, &QPushButton::toggled, this, [this](bool on) {
        work_.setPens(on ? work::Pens::One : work::Pens::InColour);
        if (isVisible()) {
            open();
        }
    });
    connect(&work_, &work::Work::tableChanged, this, [this] { onePen_->setChecked(work_.pens() == work::Pens::One); });
    connect(wholeLegend_, &QPushButton::toggled, this, [this] { open(); });
    connect(redLight_, &QPushButton::toggled, this, &Copies::showPage);
    connect(papers_, &PapersChoice::changed, this, &Copies::open);
    connect(save_, &QPushButton::clicked, this, &Copies::askAndSave);
    connect(print_, &QPushButton::clicked, this, [this] { printOn(printer_->currentText()); });
    connect(back_, &QPushButton::clicked, this, &Copies::left);
    connect(&work_, &work::Work::planReplaced, this, [this] {
        all_.clear();
        sets_->setValue(1);
        view_->show(nullptr, light_, Seen::InColour);
    });
}

void Copies::setLight(look::Light light) {
    light_ = light;
    if (auto* card = findChild<QWidget*>(QStringLiteral("copiesCard"))) {
        QPalette p = card->palette();
        p.setColor(QPalette::Window, look::colours(light).card);
        card->setPalette(p);
    }
    showPage();
}

void Copies::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    painter.fillRect(rect(), look::colours(light_).desk);
}

void Copies::open() {
    isMaking_ = true;
    title_->setText(tr("Laying out the pages"));
    const int round = ++round_;
    CopyWish wish;
    wish.angles = work_.angles();
    wish.pens = onePen_->isChecked() ? symbols::PenMode::OnePen : symbols::PenMode::Colour;
    wish.beside = papers_->wish();
    wish.legend = wholeLegend_->isChecked() ? symbols::LegendExtent::Everything : symbols::LegendExtent::NotStandard;
    const std::string paper = paper_->currentData().toString().toStdString();
    if (auto chosen = paper.empty() ? Result<film::PaperChoice>(film::usualPapers()) : film::parsePaper(paper)) {
        wish.papers = std::move(*chosen);
    }
    work_.errands().run(
        work::Lane::Makings, tr("Asking for printers"), work::GivingUp::Allowed,
        [](work::Course&) { return printQueues(); },
        [this, round](const QStringList& queues) {
            if (round == round_) {
                listQueues(queues);
            }
        });
    const auto model =
        work_.model() != nullptr ? std::make_shared<const geodesy::MagneticModel>(*work_.model()) : nullptr;
    work_.errands().run(
        work::Lane::Makings, tr("Laying out the pages"), work::GivingUp::Allowed,
        [plan = work_.committed(), find = work_.finder(), reader = work_.reader(), wish, model](work::Course& course) {
            // The window's height model may still be on its way: this thread opens its own.
            sheets::Watch watch;
            watch.isStopped = [&course] { return course.isStopped(); };
            auto opened = sheets::heightsOf(plan, find, reader, watch);
            const std::shared_ptr<const sheets::Elevation> heights = opened ? std::move(*opened) : nullptr;
            return makeSheets(plan, wish, model.get(), heights.get(), course);
        },
        [this, round](MadeSheets made) {
            if (round == round_) {
                take(std::move(made));
            }
        },
        [this, round] {
            if (round == round_) {
                whenReady_.clear();
                take({});
            }
        });
}

void Copies::whenReady(std::function<void()> then) {
    if (isMaking_) {
        whenReady_.push_back(std::move(then));
    } else {
        then();
    }
}

void Copies::listQueues(const QStringList& queues) {
    printer_->clear();
    printer_->addItems(queues.isEmpty() ? QStringList{tr("no printer is known")} : queues);
    printer_->setEnabled(!queues.isEmpty());
    print_->setEnabled(!queues.isEmpty());
    print_->setToolTip(queues.isEmpty() ? tr("This computer knows no printer. Save as PDF instead.")
                                        : tr("The same pages as the PDF, at true size"));
}

void Copies::take(MadeSheets made) {
    isMaking_ = false;
    made_ = std::make_shared<const MadeSheets>(std::move(made));
    all_.clear();
    for (const auto* sheets : {&made_->films, &made_->cards}) {
        for (const Sheet& sheet : *sheets) {
            all_.push_back(&sheet);
        }
    }
    page_->clear();
    for (const Sheet* sheet : all_) {
        page_->addItem(sheet->isFilm ? tr("Film %1").arg(sheet->name) : sheet->name);
    }
    at_ = std::clamp(at_, 0, std::max(0, static_cast<int>(all_.size()) - 1));
    summary_->setText(tr("%1 films, %2 cards and papers").arg(made_->films.size()).arg(made_->cards.size()));
    save_->setEnabled(!all_.empty());
    showPage();
    for (const auto& then : std::exchange(whenReady_, {})) {
        then();
    }
}

/// What is to be known before printing; under red light first what would be lost on the page that is looked at.
void Copies::showNotes() {
    QStringList notes;
    if (redLight_->isChecked() && !all_.empty()) {
        const Sheet& sheet = *all_[static_cast<std::size_t>(at_)];
        notes << (sheet.lost.isEmpty() ? tr("Under red light nothing drawn here is lost.")
                                       : tr("Lost under red light: %1.").arg(sheet.lost.join(QStringLiteral(", "))));
        if (!sheet.faint.isEmpty()) {
            notes << tr("Faint: %1. One pen keeps all of it.").arg(sheet.faint.join(QStringLiteral(", ")));
        }
        notes << tr("The map below is not judged: red and brown of its print may vanish.");
    }
    if (made_->fault) {
        notes << say_(*made_->fault);
    }
    for (const Error& note : made_->notes) {
        notes << say_(note);
    }
    notes_->setText(notes.isEmpty() ? tr("Check declination and datum against the paper map. Local rules and the "
                                         "leader's judgement come first.")
                                    : notes.join(QStringLiteral("\n\n")));
}

Seen Copies::seen(const Sheet& sheet) const {
    if (redLight_->isChecked()) {
        return onePen_->isChecked() || !sheet.isFilm ? Seen::OnePenUnderRedLight : Seen::UnderRedLight;
    }
    return onePen_->isChecked() ? Seen::OnePen : Seen::InColour;
}

void Copies::showPage() {
    const Sheet* sheet = all_.empty() ? nullptr : all_[static_cast<std::size_t>(at_)];
    view_->show(sheet, light_, sheet == nullptr ? Seen::InColour : seen(*sheet));
    showNotes();
    if (sheet == nullptr) {
        title_->setText(isMaking_ ? tr("Laying out the pages") : tr("No page: %1").arg(notes_->text()));
        seen_->clear();
        return;
    }
    page_->setCurrentIndex(at_);
    if (sheet->isFilm) {
        papers_->lookAtFilm();
    } else {
        const auto known = made_->columns.find(sheet->paper);
        papers_->lookAt(sheet->paper, known == made_->columns.end() ? std::vector<ColumnName>{} : known->second);
    }
    title_->setText(tr("Page %1 of %2, %3 x %4 mm, as it will print")
                        .arg(at_ + 1)
                        .arg(all_.size())
                        .arg(sheet->page.paper.width.value(), 0, 'f', 0)
                        .arg(sheet->page.paper.height.value(), 0, 'f', 0));
    seen_->setText(tr("seen at %1 %").arg(qRound(view_->scale() * 100)));
}

void Copies::turn(int pages) {
    if (!all_.empty()) {
        at_ = std::clamp(at_ + pages, 0, static_cast<int>(all_.size()) - 1);
        showPage();
    }
}

/// A number that is clicked on is typed over, not typed into.
bool Copies::eventFilter(QObject* watched, QEvent* event) {
    auto* field = qobject_cast<QLineEdit*>(watched);
    if (field != nullptr && event->type() == QEvent::MouseButtonRelease) {
        field->selectAll();
    }
    return QWidget::eventFilter(watched, event);
}

void Copies::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Escape:
            Q_EMIT left();
            return;
        case Qt::Key_Right:
        case Qt::Key_PageDown:
            return turn(1);
        case Qt::Key_Left:
        case Qt::Key_PageUp:
            return turn(-1);
        case Qt::Key_M:
            onePen_->toggle();
            return;
        case Qt::Key_D:
            redLight_->toggle();
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

}  // namespace crosstick::copies
