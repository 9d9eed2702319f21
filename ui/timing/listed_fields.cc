#include "ui/timing/listed_fields.h"

#include <QVBoxLayout>

namespace crosstick::timing {

ListedFields::ListedFields(const QString& title, QString name, const QString& example, Take take, QWidget* parent)
    : QWidget(parent), name_(std::move(name)), take_(std::move(take)), rows_(new QVBoxLayout(this)) {
    rows_->setContentsMargins(0, 0, 0, 0);
    rows_->setSpacing(3);
    auto* label = new QLabel(title, this);
    label->setFont(look::face(11));
    label->setWordWrap(true);
    rows_->addWidget(label);
    adding_ = new look::Field(
        {}, example, [this](const QString& typed) { return take_(count_, typed); }, this);
    adding_->edit()->setAccessibleName(tr("%1: one more").arg(name_));
    rows_->addWidget(adding_);
    connect(adding_, &look::Field::left, this, &ListedFields::left);
}

void ListedFields::setLight(look::Light light) {
    light_ = light;
    adding_->setLight(light);
    for (look::Field* field : fields_) {
        field->setLight(light);
    }
}

void ListedFields::grow() {
    const std::size_t place = fields_.size();
    auto* field = new look::Field(
        {}, tr("empty: taken out"), [this, place](const QString& typed) { return take_(place, typed); }, this);
    field->edit()->setAccessibleName(tr("%1 %2").arg(name_).arg(place + 1));
    field->setLight(light_);
    rows_->insertWidget(static_cast<int>(place) + 1, field);
    if (!fields_.empty()) {
        setTabOrder(fields_.back()->edit(), field->edit());
    }
    setTabOrder(field->edit(), adding_->edit());
    connect(field, &look::Field::left, this, &ListedFields::left);
    fields_.push_back(field);
}

void ListedFields::show(const std::vector<Line>& lines) {
    count_ = lines.size();
    while (fields_.size() < lines.size()) {
        grow();
    }
    for (std::size_t n = 0; n < fields_.size(); ++n) {
        const bool isLine = n < lines.size();
        fields_[n]->setVisible(isLine);
        fields_[n]->show(isLine ? lines[n].value : QString());
        fields_[n]->tell(isLine ? lines[n].told : QString());
    }
}

}  // namespace crosstick::timing
