#include "app/desktop/panels/outline_editor.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QVBoxLayout>

#include "app/desktop/document/case_document.h"
#include "app/desktop/panels/page.h"
#include "app/desktop/panels/paste_form.h"
#include "app/desktop/panels/points_form.h"
#include "app/desktop/panels/size_form.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

OutlineEditor::OutlineEditor(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      ways_(new QComboBox(this)),
      title_(heading({}, this)),
      size_(new SizeForm(this)),
      points_(new PointsForm(this)),
      paste_(new PasteForm(this)) {
  build_ways();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(title_);
  column->addWidget(ways_);
  column->addWidget(size_);
  column->addWidget(points_);
  column->addWidget(paste_);
  connect(size_, &SizeForm::drawn, this, &OutlineEditor::put);
  connect(paste_, &PasteForm::drawn, this, &OutlineEditor::put);
  connect(points_, &PointsForm::ring_edited, this, [this](const auto& ring, const QString& what) {
    if (ring.size() >= 3) put(ring, what);
  });
  connect(&document, &CaseDocument::case_changed, this, &OutlineEditor::show_case);
  set_way(Way::ellipse);
  show_case();
}

void OutlineEditor::build_ways() {
  ways_->setObjectName("outline_way");
  ways_->setAccessibleName(spoken("How the outline is entered"));
  ways_->view()->setAccessibleName(spoken("How the outline is entered"));
  ways_->addItems({spoken("Length x width, ellipse"), spoken("Length x width, rectangle"),
                   spoken("Corner points"), spoken("Pasted coordinates")});
  ways_->setMinimumHeight(26);
  ways_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  connect(ways_, &QComboBox::currentIndexChanged, this,
          [this](int index) { set_way(static_cast<Way>(index)); });
}

void OutlineEditor::set_way(Way way) {
  ways_->setCurrentIndex(static_cast<int>(way));
  const bool by_size = way == Way::ellipse || way == Way::rectangle;
  size_->setVisible(by_size);
  size_->set_shape(way == Way::rectangle ? SizeForm::Shape::rectangle : SizeForm::Shape::ellipse);
  points_->setVisible(way == Way::points);
  paste_->setVisible(way == Way::pasted);
}

void OutlineEditor::type_size() {
  set_way(Way::ellipse);
  size_->start();
}

void OutlineEditor::set_target(const OutlineTarget& target) {
  if (target == target_) return;
  target_ = target;
  points_->set_ring({});  // points typed for another shape do not become this one's
  show_case();
}

void OutlineEditor::show_case() {
  const auto& value = document_.value();
  const auto& wounds = value.current().wounds;
  const bool there = target_.is_new ? target_.ref.kind != ShapeRef::Kind::island ||
                                          target_.ref.index < wounds.size()
                                    : exists(value, target_.ref);
  if (!there) return;  // the list is about to choose another
  title_->setText(spoken("Outline: {1}", {title_of(value, target_)}));
  size_->set_head_direction(value.head_direction_deg);
  size_->set_centre(place_for(value, target_));
  size_->set_replaces(!target_.is_new);
  if (!target_.is_new) points_->set_ring(outline_of(value, target_));
}

void OutlineEditor::put(const geometry::Ring& ring, const QString& what) {
  const bool was_new = target_.is_new;
  const QString text = spoken("{1}: {2}", {title_of(document_.value(), target_), what});
  const ShapeRef ref = put_outline(document_, target_, ring, text);
  if (was_new) emit shape_added(ref);
}

}  // namespace drapewright::desktop
