#include "app/desktop/panels/wound_page.h"

#include "app/desktop/document/case_document.h"
#include "app/desktop/panels/case_form.h"
#include "app/desktop/panels/fluid_form.h"
#include "app/desktop/panels/outline_editor.h"
#include "app/desktop/panels/shape_form.h"
#include "app/desktop/panels/shape_list.h"
#include "app/desktop/panels/site_form.h"
#include "app/desktop/panels/undermining_form.h"

namespace drapewright::desktop {

WoundPage::WoundPage(CaseDocument& document, QWidget* parent) : Page("Wound", parent) {
  auto* list = new ShapeList(document, this);
  auto* outline = new OutlineEditor(document, this);
  auto* form = new ShapeForm(document, this);
  add_heading("Case");
  add(new CaseForm(document, this));
  add(new SiteForm(document, this));
  add_heading("Wounds and skin zones");
  add(list);
  add(outline);
  add(form);
  add_heading("Fluid and position");
  add(new FluidForm(document, this));
  add_stretch();
  const auto follow = [=](const OutlineTarget& target) {
    outline->set_target(target);
    form->set_shape(target.is_new ? ShapeRef{} : target.ref);
  };
  connect(list, &ShapeList::target_changed, this, follow);
  connect(outline, &OutlineEditor::shape_added, this,
          [list](const ShapeRef& ref) { list->choose({.ref = ref, .is_new = false}); });
  connect(&document, &CaseDocument::case_replaced, this, [=, &document] {
    outline->set_way(document.has_wounds() ? OutlineEditor::Way::points
                                           : OutlineEditor::Way::ellipse);
  });
  connect(&form->undermining(), &UnderminingForm::range_chosen, this, &WoundPage::range_chosen);
  connect(&form->undermining(), &UnderminingForm::tunnel_chosen, this, &WoundPage::tunnel_chosen);
  follow(list->target());
}

}  // namespace drapewright::desktop
