// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/network.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "network/network_work.h"

namespace tapward::network {

Network::Network() : m(std::make_unique<Work>()) {}
Network::~Network() = default;
Network::Network(Network&&) noexcept = default;
Network& Network::operator=(Network&&) noexcept = default;

int Network::addJunction() { return m->junctions++; }

int Network::addLink(Link link)
{
    assert(link.from >= kOutside && link.from < m->junctions);
    assert(link.to >= kOutside && link.to < m->junctions);
    m->links.push_back(std::move(link));
    return static_cast<int>(m->links.size()) - 1;
}

void Network::prepare() { m->prepare(); }
int Network::junctionCount() const { return m->junctions; }
int Network::linkCount() const { return static_cast<int>(m->links.size()); }
std::span<Element> Network::elements(int link) { return m->links[at(link)].elements; }
std::span<const Element> Network::elements(int link) const { return m->links[at(link)].elements; }
void Network::forgetStart() { m->cold = true; }
const Solution& Network::solve() { return m->solve(); }

void Network::elementLosses(int link, std::span<double> losses) const
{
    const Work::Branch& branch = m->branches[at(link)];
    const double flow = m->solution.flow_m3s[at(link)];
    const std::size_t count = std::min(losses.size(), branch.end - branch.first);
    double sum = branch.rest_Pa;
    std::size_t barrier = count;
    for (std::size_t e = 0; e < count; ++e) {
        const ReadyLaw& law = m->ready[branch.first + e];
        const bool turned = m->reversed[branch.first + e] != 0;
        losses[e] = turned ? -law.at(-flow).loss : law.at(flow).loss;
        sum += losses[e];
        const Ways open = law.ways();
        const double push = m->across(branch) * (turned ? -1 : 1);
        if (barrier == count && !(push < 0 ? open.backward : open.forward))
            barrier = e;
    }
    if (branch.state != Work::State::Open && barrier < count)
        losses[barrier] += m->across(branch) - sum;
}

void Network::Work::prepare()
{
    outside = junctions;
    const std::size_t nodes = at(junctions) + 1;
    pressure.assign(nodes, 0.0);
    change.assign(nodes, 0.0);
    right.assign(at(junctions), 0.0);
    group.assign(nodes, 0);
    grounded.assign(nodes, 0);
    fed.assign(nodes, 0);
    lift.assign(nodes, 0.0);
    lifter.assign(nodes, -1);
    branches.assign(links.size(), {});
    ready.clear();
    reversed.clear();
    cold = true;

    std::vector<std::pair<std::pair<int, int>, std::size_t>> ends;
    for (std::size_t l = 0; l < links.size(); ++l) {
        Branch& b = branches[l];
        b.from = links[l].from == kOutside ? outside : links[l].from;
        b.to = links[l].to == kOutside ? outside : links[l].to;
        b.first = ready.size();
        ready.resize(ready.size() + links[l].elements.size());
        b.end = ready.size();
        if (b.from != b.to && b.from != outside && b.to != outside)
            ends.push_back({std::minmax(b.from, b.to), l});
    }
    reversed.assign(ready.size(), 0);
    std::sort(ends.begin(), ends.end());
    std::vector<std::pair<int, int>> pairs;
    for (const auto& [pair, l] : ends) {
        if (pairs.empty() || pairs.back() != pair)
            pairs.push_back(pair);
        branches[l].slot = static_cast<int>(pairs.size()) - 1;
    }
    matrix.analyse(junctions, pairs);

    solution = {};
    solution.flow_m3s.assign(links.size(), 0.0);
    solution.pressure_Pa.assign(at(junctions), 0.0);
    solution.isolated.assign(at(junctions), 0);
}

}  // namespace tapward::network
