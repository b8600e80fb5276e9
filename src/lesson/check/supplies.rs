use super::super::desk::{Desk, word_or};
use super::super::field::{At, Field};
use super::super::limits;
use super::super::model::{Life, Mixing, SupplyRule};
use super::super::raw;
use super::super::tree::NodeId;

/// How cups are filled and amounts rounded.
pub(super) fn mixing(desk: Desk<'_>, root: NodeId, raw: &raw::Lesson) -> Option<Mixing> {
    let At { node, value: raw } = desk.need(root, "mixing", &raw.mixing)?;
    let step = &limits::MEASURE_STEP;
    let cup_loss = desk.need_bounded(*node, "cup loss", &raw.cup_loss, &limits::CUP_LOSS);
    let step_us = desk.need_bounded(*node, "step us", &raw.step_us, step);
    let step_metric = desk.need_bounded(*node, "step metric", &raw.step_metric, step);
    let scale = desk.need_bounded(*node, "scale step", &raw.scale_step, &limits::SCALE_STEP);
    let keeps = desk.need_bounded(*node, "keeps", &raw.keeps, &limits::DAYS);
    Some(Mixing {
        cup_loss: cup_loss?,
        step_us: step_us?,
        step_metric: step_metric?,
        scale_step: scale?,
        keeps: keeps?.0,
    })
}

/// What is needed besides paint; rules that count nothing are left out.
pub(super) fn supplies(desk: Desk<'_>, raw: &raw::Lesson) -> Vec<SupplyRule> {
    let Field::Present(entries) = &raw.supplies else { return Vec::new() };
    let rules = entries.0.iter().filter_map(|entry| {
        let raw = entry.value.as_ref()?;
        let count = desk.need_bounded(entry.node, "count", &raw.count, &limits::SUPPLY_COUNT);
        let per = desk.need(entry.node, "per", &raw.per).copied();
        let life = word_or(&raw.life, Life::UsedUp);
        let item = entry.name.clone();
        Some(SupplyRule { item, count: count?, per: per?, life: life? })
    });
    rules.filter(|rule| rule.count > 0.0).collect()
}
