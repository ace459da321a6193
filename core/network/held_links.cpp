// SPDX-License-Identifier: GPL-3.0-or-later
// One-way links at rest: which groups of junctions they part, when they open, what pressure they leave.

#include <algorithm>
#include <limits>

#include "network/network_work.h"

namespace tapward::network {

void Network::Work::findGroups()
{
    // Union by smallest member, with path halving.
    for (int i = 0; i <= outside; ++i)
        group[at(i)] = i;
    auto head = [&](int i) {
        while (group[at(i)] != i)
            i = group[at(i)] = group[at(group[at(i)])];
        return i;
    };
    for (const Branch& b : branches) {
        if (b.state != State::Open)
            continue;
        const int i = head(b.from);
        const int j = head(b.to);
        group[at(std::max(i, j))] = std::min(i, j);
    }
    const int air = head(outside);
    for (int i = 0; i <= outside; ++i) {
        group[at(i)] = head(i);
        grounded[at(i)] = group[at(i)] == i && i != air;
    }
    grounded[at(outside)] = 1;
}

// Which junctions water can reach from the air by links that are open that way. What goes out of the others is what
// comes in: nothing, whatever the pressures. So who is isolated follows from the ways alone, never from a flow that
// is nothing but rounding.
void Network::Work::findFed()
{
    std::fill(fed.begin(), fed.end(), std::uint8_t{0});
    fed[at(outside)] = 1;
    for (bool more = true; more;) {
        more = false;
        for (const Branch& b : branches) {
            if (b.state == State::Shut)
                continue;
            std::uint8_t& from = fed[at(b.from)];
            std::uint8_t& to = fed[at(b.to)];
            if (from != to && (from ? b.bound >= 0 : b.bound <= 0)) {
                from = to = 1;
                more = true;
            }
        }
    }
}

bool Network::Work::leavesUnfed(const Branch& b) const
{
    return b.bound != 0 && !fed[at(b.bound > 0 ? b.from : b.to)] && fed[at(b.bound > 0 ? b.to : b.from)];
}

bool Network::Work::release()
{
    bool any = false;
    for (Branch& b : branches) {
        if (b.state != State::Held || group[at(b.from)] != group[at(b.to)])
            continue;
        const LawValue v = valueAt(b, 0);
        if (b.bound * (across(b) - v.loss) > pushTolerance(v)) {
            b.state = State::Open;
            b.loss = v.loss;
            b.slope = v.slope;
            any = true;
        }
    }
    return any || releaseRound();
}

bool Network::Work::releaseRound()
{
    // Groups float against each other. A held link u -> v asks that v stand at least so far above u that
    // it is not pushed open. Such demands can be met together unless they close a round that gains: then
    // water would flow around it, and its links open (Bellman 1958; Ford 1956).
    std::fill(lift.begin(), lift.end(), 0.0);
    std::fill(lifter.begin(), lifter.end(), -1);
    int groups = 1;
    for (int i = 0; i <= outside; ++i)
        groups += group[at(i)] == i;
    int last = -1;
    for (int pass = 0; pass < groups; ++pass) {
        last = -1;
        for (std::size_t l = 0; l < branches.size(); ++l) {
            const Branch& b = branches[l];
            if (b.state != State::Held || group[at(b.from)] == group[at(b.to)])
                continue;
            const LawValue v = valueAt(b, 0);
            const double push = b.bound * (across(b) - v.loss);
            const int low = group[at(b.bound > 0 ? b.from : b.to)];
            const int high = group[at(b.bound > 0 ? b.to : b.from)];
            if (lift[at(low)] + push > lift[at(high)] + pushTolerance(v)) {
                lift[at(high)] = lift[at(low)] + push;
                lifter[at(high)] = static_cast<int>(l);
                last = high;
            }
        }
        if (last < 0)
            return false;
    }
    auto below = [&](int high) {
        const Branch& b = branches[at(lifter[at(high)])];
        return group[at(b.bound > 0 ? b.from : b.to)];
    };
    for (int i = 0; i < groups; ++i)
        last = below(last);  // now surely on the round
    int g = last;
    do {
        const int next = below(g);
        Branch& b = branches[at(lifter[at(g)])];
        const LawValue v = valueAt(b, 0);
        b.state = State::Open;
        b.loss = v.loss;
        b.slope = v.slope;
        g = next;
    } while (g != last);
    findGroups();
    return true;
}

void Network::Work::settlePressures()
{
    // A one-way link that happens to carry nothing joins no groups: whether it was held on the way here or
    // just came to rest must not show in the answer.
    for (Branch& b : branches) {
        if (b.state == State::Open && b.bound != 0 && reported(b) == 0) {
            b.state = State::Held;
            b.flow = 0;
            b.resting = true;
        }
    }
    findGroups();
    // A group cut off from the air stands at the lowest pressure its held inlets allow: a supply behind
    // its check valve shows through at rest. What no inlet feeds is isolated.
    constexpr double kNone = -std::numeric_limits<double>::infinity();
    std::fill(lift.begin(), lift.end(), kNone);
    lift[at(group[at(outside)])] = 0;
    for (int pass = 0; pass <= outside; ++pass) {
        bool any = false;
        for (const Branch& b : branches) {
            if (b.state != State::Held || group[at(b.from)] == group[at(b.to)])
                continue;
            const LawValue v = valueAt(b, 0);
            const double push = b.bound * (across(b) - v.loss);
            const double low = lift[at(group[at(b.bound > 0 ? b.from : b.to)])];
            double& high = lift[at(group[at(b.bound > 0 ? b.to : b.from)])];
            if (low + push > high + pushTolerance(v)) {
                high = low + push;
                any = true;
            }
        }
        if (!any)
            break;
    }
    const double air = lift[at(group[at(outside)])];
    for (int i = 0; i < junctions; ++i) {
        const double own = lift[at(group[at(i)])];
        solution.isolated[at(i)] = !fed[at(i)];
        if (own != kNone)
            pressure[at(i)] += own - air;
        solution.pressure_Pa[at(i)] = own == kNone ? std::numeric_limits<double>::quiet_NaN() : pressure[at(i)];
    }
}

}  // namespace tapward::network
