#include "app/desktop/panels/site_form.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/text_field.h"
#include "app/desktop/fields/wrapped_label.h"
#include "app/wording/spoken.h"
#include "core/practice/body_sites.h"

namespace drapewright::desktop {
namespace {

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// What a caution is about: its first sentence. All of it stands in the findings and the tooltip.
QString first_sentence(const QString& text) { return text.section(". ", 0, 0).remove('.') + "."; }

std::vector<const practice::SiteCaution*> cautions_of(const practice::BodySite& site) {
  std::vector<const practice::SiteCaution*> all;
  for (const std::string_view id : site.cautions) all.push_back(&practice::site_caution(id));
  std::ranges::stable_partition(all, [](const auto* caution) { return caution->warns; });
  return all;
}

}  // namespace

SiteForm::SiteForm(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      words_(new TextField(spoken("for example: left heel"), this)),
      places_(new QComboBox(this)),
      clock_(quiet_text({}, this)),
      advice_(new WrappedLabel(this)),
      limb_(new QWidget(this)),
      girth_(new LimitedField(
          practice::limit("limb_girth_cm"),
          {.decimals = 1, .step = 1, .optional = true, .when_empty = spoken("not measured")},
          limb_)) {
  build_words();
  build_places();
  build_girth();
  clock_->setObjectName("clock_convention");
  advice_->setObjectName("site_cautions");
  auto* form = new QFormLayout;
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->addRow(spoken("Body site"), words_);
  form->addRow(spoken("Place"), places_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(form);
  column->addWidget(clock_);
  column->addWidget(advice_);
  column->addWidget(limb_);
  connect(&document, &CaseDocument::case_changed, this, &SiteForm::show_case);
  show_case();
}

void SiteForm::build_words() {
  words_->setObjectName("body_site");
  words_->setAccessibleName(spoken("Body site"));
  words_->setToolTip(spoken("Where the wound is, in your own words: side and place."));
  connect(words_, &QLineEdit::textEdited, this, [this](const QString& text) {
    document_.edit(spoken("body site"), "body_site",
                   [&](wound::Case& value) { value.body_site = text.toStdString(); });
  });
  connect(words_, &QLineEdit::editingFinished, this, [this] { document_.end_stretch(); });
}

void SiteForm::build_places() {
  places_->setObjectName("body_site_id");
  places_->setAccessibleName(spoken("Place of the body"));
  places_->view()->setAccessibleName(spoken("Place of the body"));
  places_->setToolTip(spoken(
      "The place decides which cautions apply and which way the clock runs. Unless you choose one, "
      "it is read from your own words."));
  places_->setMinimumHeight(26);
  places_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  places_->setFocusPolicy(Qt::StrongFocus);
  places_->addItem({}, QString());
  for (const auto& site : practice::body_sites()) {
    places_->addItem(spoken(site.name), text_of(site.id));
  }
  connect(places_, &QComboBox::activated, this, [this](int index) {
    const std::string id = places_->itemData(index).toString().toStdString();
    document_.edit(spoken("place of the body"), {},
                   [&](wound::Case& value) { value.body_site_id = id; });
  });
}

void SiteForm::build_girth() {
  auto* column = new QVBoxLayout(limb_);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(girth_);
  column->addWidget(quiet_text(
      spoken("Asked because film that closes round a limb can cut off its blood flow: the plan "
             "warns where "
             "a film is as long as the limb is round."),
      limb_));
  connect(&girth_->field(), &NumberField::entered, this, [this](std::optional<double> girth) {
    document_.edit(spoken("limb girth"), "limb_girth_cm",
                   [&](wound::Case& value) { value.limb_girth_cm = girth; });
  });
  connect(&girth_->field(), &NumberField::left, this, [this] { document_.end_stretch(); });
}

void SiteForm::show_case() {
  const auto& value = document_.value();
  words_->show_text(QString::fromStdString(value.body_site));
  show_place(value);
  show_advice(value);
  girth_->show_number(value.limb_girth_cm);
  const auto* site = wound::site_of(value);
  limb_->setVisible((site != nullptr && site->on_limb) || value.limb_girth_cm);
}

void SiteForm::show_place(const wound::Case& value) {
  const auto named = practice::body_sites_named(value.body_site);
  places_->setItemText(0, named.empty() ? spoken("as written: not in the list")
                                        : spoken("as written: {1}", {spoken(named.front()->name)}));
  const QString id = QString::fromStdString(value.body_site_id);
  if (!id.isEmpty() && places_->findData(id) < 0)
    places_->addItem(spoken("not known here: {1}", {id}), id);
  places_->setCurrentIndex(id.isEmpty() ? 0 : places_->findData(id));
}

void SiteForm::show_advice(const wound::Case& value) {
  const auto* site = wound::site_of(value);
  const auto twelve = site != nullptr ? site->twelve : practice::Twelve::head;
  clock_->setText(spoken(twelve == practice::Twelve::heel
                             ? term("Clock on the foot: 12 = {1}, 6 = {2}.")
                             : term("Clock: 12 = {1}, 6 = {2}."),
                         {spoken(name_of(twelve)), spoken(opposite_of(twelve))}));
  clock_->setToolTip(spoken("Source: {1}", {practice::describe(practice::source_of_clock())}));
  QStringList lines, tips;
  if (site != nullptr) {
    for (const auto* caution : cautions_of(*site)) {
      const QString all = spoken(caution->text);
      lines << (caution->warns ? spoken("Warning: {1}", {first_sentence(all)})
                               : spoken("Note: {1}", {first_sentence(all)}));
      tips << all + " (" + QString::fromStdString(practice::describe(caution->source)) + ")";
    }
  }
  advice_->show_text(lines.join('\n'));
  advice_->setToolTip(tips.join("\n\n"));
  advice_->setVisible(!lines.isEmpty());
}

}  // namespace drapewright::desktop
