#include "app/desktop/panels/wound_page.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/panels/case_form.h"
#include "app/desktop/panels/fluid_form.h"
#include "app/desktop/panels/outline_editor.h"
#include "app/desktop/panels/shape_form.h"
#include "app/desktop/panels/shape_list.h"
#include "app/desktop/panels/site_form.h"
#include "app/desktop/panels/undermining_form.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

WoundPage::WoundPage(CaseDocument& document, QWidget* parent)
    : Page(spoken("Wound"), parent),
      list_(new ShapeList(document, this)),
      outline_(new OutlineEditor(document, this)) {
  auto* form = new ShapeForm(document, this);
  add_heading(spoken("Case"));
  add(new CaseForm(document, this));
  add(new SiteForm(document, this));
  add_heading(spoken("Wounds and skin zones"));
  add(list_);
  add(outline_);
  add(form);
  add_heading(spoken("Fluid and position"));
  add(new FluidForm(document, this));
  add_stretch();
  const auto follow = [this, form](const OutlineTarget& target) {
    outline_->set_target(target);
    form->set_shape(target.is_new ? ShapeRef{} : target.ref);
    emit target_changed(target);
  };
  connect(list_, &ShapeList::target_changed, this, follow);
  connect(outline_, &OutlineEditor::shape_added, this, &WoundPage::choose);
  connect(&document, &CaseDocument::case_replaced, this, [this, &document] {
    outline_->set_way(document.has_wounds() ? OutlineEditor::Way::points
                                            : OutlineEditor::Way::ellipse);
  });
  connect(&form->undermining(), &UnderminingForm::range_chosen, this, &WoundPage::range_chosen);
  connect(&form->undermining(), &UnderminingForm::tunnel_chosen, this, &WoundPage::tunnel_chosen);
  follow(list_->target());
}

const OutlineTarget& WoundPage::target() const { return list_->target(); }

void WoundPage::choose(const ShapeRef& ref) { list_->choose({.ref = ref, .is_new = false}); }

void WoundPage::choose_target(const OutlineTarget& target) { list_->choose(target); }

void WoundPage::type_size() { outline_->type_size(); }

}  // namespace drapewright::desktop
