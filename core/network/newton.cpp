// SPDX-License-Identifier: GPL-3.0-or-later
// The solve of network.h: Newton's method on flows that keep every junction in balance.

#include <algorithm>
#include <cmath>

#include "network/network_work.h"

namespace tapward::network {
namespace {

constexpr double kTypicalFlow = 2e-5;         // m³/s: its slopes serve for the first step from rest
constexpr double kNoFlow = 1e-13;             // m³/s: reported as none; 0.1 µL in ten minutes is 1000 times it
constexpr double kFlowTolerance = 1e-10;      // m³/s
constexpr double kPressureTolerance = 1e-5;   // Pa
constexpr double kRelativeTolerance = 1e-12;  // of the largest pressure: rounding
constexpr double kMassPerVolume = 1000;       // kg/m³, upper bound, for the stated residual
constexpr double kMassTolerance = 1e-9;       // kg/s
constexpr double kFlowRounding = 1e-14;       // of the largest flow
constexpr int kMostIterations = 300;
constexpr int kStrictAfter = 40;

}  // namespace

double Network::Work::reported(const Branch& b) const
{
    return std::abs(b.flow) < kNoFlow || b.bound * b.flow < 0 ? 0.0 : b.flow;
}

bool Network::Work::refresh()
{
    bool regroup = cold, newWays = cold;
    for (std::size_t l = 0; l < branches.size(); ++l) {
        Branch& b = branches[l];
        const State before = b.state;
        const int boundBefore = b.bound;
        Ways open;
        b.rest_Pa = 0;
        std::size_t e = b.first;
        for (const Element& element : links[l].elements) {
            ready[e] = ReadyLaw(element.law, element.density, element.viscosity);
            reversed[e] = element.reversed;
            const Ways own = ready[e].ways();
            open.forward = open.forward && (element.reversed ? own.backward : own.forward);
            open.backward = open.backward && (element.reversed ? own.forward : own.backward);
            b.rest_Pa += kGravity * element.density * element.rise_m;
            ++e;
        }
        b.bound = open.forward == open.backward ? 0 : open.forward ? 1 : -1;
        if (b.resting)
            b.state = State::Open;
        b.resting = false;
        const bool shut = !open.forward && !open.backward;
        if (shut)
            b.state = State::Shut;
        else if (before == State::Shut || b.bound != boundBefore)
            b.state = State::Open;
        newWays = newWays || (before == State::Shut) != shut || b.bound != boundBefore;
        regroup = regroup || b.state != before;
        // A flow that has just been barred cannot be taken out of one link alone. Rest is always allowed.
        if ((shut && b.flow != 0) || b.bound * b.flow < -2 * kNoFlow)
            cold = true;
    }
    if (newWays)
        findFed();
    for (Branch& b : branches) {
        if (b.state == State::Open && leavesUnfed(b)) {
            b.state = State::Held;
            regroup = true;
            cold = cold || b.flow != 0;
        }
    }
    if (cold) {
        for (Branch& b : branches) {
            b.flow = 0;
            if (b.state == State::Held && !leavesUnfed(b))
                b.state = State::Open;
        }
        std::fill(pressure.begin(), pressure.end(), 0.0);
        regroup = true;
    }
    return regroup;
}

LawValue Network::Work::valueAt(const Branch& b, double flow) const
{
    LawValue sum{b.rest_Pa, b.first == b.end ? kLeastSlope : 0.0};
    if (b.first == b.end)
        sum.loss += kLeastSlope * flow;
    for (std::size_t e = b.first; e < b.end; ++e) {
        const bool turned = reversed[e] != 0;
        const LawValue v = ready[e].at(turned ? -flow : flow);
        sum.loss += turned ? -v.loss : v.loss;
        sum.slope += v.slope;
    }
    return sum;
}

void Network::Work::evaluateAt(double share)
{
    for (Branch& b : branches) {
        if (b.state != State::Open)
            continue;
        const LawValue v = valueAt(b, b.flow + share * b.step);
        b.loss = v.loss;
        b.slope = v.slope;
    }
}

void Network::Work::solveStep()
{
    std::fill(change.begin(), change.end(), 0.0);
    for (const Branch& b : branches) {
        if (b.state != State::Open || b.from == b.to)
            continue;
        const double drive = b.ease * (b.loss - across(b)) - b.flow;
        if (!grounded[at(b.from)])
            change[at(b.from)] += drive;
        if (!grounded[at(b.to)])
            change[at(b.to)] -= drive;
    }
    matrix.solve(std::span(change).first(at(junctions)));
    for (Branch& b : branches)
        b.step = b.state == State::Open ? b.ease * (change[at(b.from)] - change[at(b.to)] - (b.loss - across(b))) : 0;
}

void Network::Work::direction()
{
    for (bool again = true; again;) {
        matrix.setZero();
        for (Branch& b : branches) {
            if (b.state != State::Open)
                continue;
            b.ease = 1 / b.slope;
            if (b.from == b.to)
                continue;
            if (!grounded[at(b.from)] && !grounded[at(b.to)])
                matrix.between(b.slot) += b.ease;
            else if (!grounded[at(b.from)])
                matrix.tie(b.from) += b.ease;
            else if (!grounded[at(b.to)])
                matrix.tie(b.to) += b.ease;
        }
        for (int i = 0; i < junctions; ++i)
            if (grounded[at(i)])
                matrix.tie(i) = 1;
        matrix.factorize();
        solveStep();

        again = false;
        for (Branch& b : branches) {
            if (b.state == State::Open && b.bound * b.flow <= kNoFlow && b.bound * b.step < -10 * kNoFlow) {
                b.state = State::Held;
                b.flow = 0;
                again = true;
            }
        }
        if (again)
            findGroups();
    }
    for (int i = 0; i < junctions; ++i)
        pressure[at(i)] += change[at(i)];
}

double Network::Work::along() const
{
    // The pressures cancel over a balanced step; taking them off first keeps the sum from losing digits.
    double sum = 0;
    for (const Branch& b : branches)
        if (b.state == State::Open)
            sum += (b.loss - across(b)) * b.step;
    return sum;
}

bool Network::Work::advance(bool strict)
{
    double start = 0;  // slope of the content along the step, at its beginning: below zero
    double most = 1;   // share of the step that keeps every one-way link within its bound
    Branch* first = nullptr;
    for (Branch& b : branches) {
        if (b.state != State::Open)
            continue;
        start -= b.slope * b.step * b.step;
        if (b.bound * b.step < 0) {
            const double share = std::max(0.0, b.bound * b.flow + kNoFlow) / -(b.bound * b.step);
            if (share < most) {
                most = share;
                first = &b;
            }
        }
    }
    const double slack = strict ? 0.0 : -0.25 * start;
    evaluateAt(most);
    double share = most;
    if (along() > slack && !balanced()) {
        // The slope of the content rises along the step: find where it crosses zero.
        double low = 0;
        double high = most;
        for (int i = 0; i < 60; ++i) {
            const double slope = along();
            if (slope > 0)
                high = share;
            else
                low = share;
            if (slope <= slack && slope >= 0.25 * start)
                break;
            double curve = 0;
            for (const Branch& b : branches)
                if (b.state == State::Open)
                    curve += b.slope * b.step * b.step;
            share -= slope / curve;
            if (!(share > low && share < high) || i % 4 == 3)
                share = 0.5 * (low + high);
            evaluateAt(share);
        }
    }
    for (Branch& b : branches)
        if (b.state == State::Open)
            b.flow += share * b.step;
    if (first && share == most) {
        first->state = State::Held;
        first->flow = 0;
        findGroups();
    }
    return share == 1;
}

bool Network::Work::polish()
{
    solveStep();
    for (const Branch& b : branches) {
        if (b.state != State::Open)
            continue;
        if (b.bound * (b.flow + b.step) < -kNoFlow)
            return false;
        if (std::abs((b.slope - 1 / b.ease) * b.step) > pushTolerance({b.loss, b.slope}))
            return false;
    }
    for (int i = 0; i < junctions; ++i)
        pressure[at(i)] += change[at(i)];
    for (Branch& b : branches) {
        b.flow += b.step;
        b.loss += b.slope * b.step;
    }
    return true;
}

// Pressure mismatch that moves no flow worth naming; `rounding` is what the pressures' size leaves open.
double Network::Work::pushTolerance(const LawValue& v) const
{
    return std::min(kPressureTolerance, kFlowTolerance * v.slope) + rounding;
}

bool Network::Work::balanced()
{
    double largest = 0;
    for (double p : pressure)
        largest = std::max(largest, std::abs(p));
    rounding = kRelativeTolerance * largest;
    for (const Branch& b : branches)
        if (b.state == State::Open && std::abs(b.loss - across(b)) > pushTolerance({b.loss, b.slope}))
            return false;
    return true;
}

// Largest over the junctions, with the flows as they will be reported.
double Network::Work::massResidual()
{
    std::fill(right.begin(), right.end(), 0.0);
    double largest = 0;
    for (const Branch& b : branches) {
        const double flow = reported(b);
        largest = std::max(largest, std::abs(flow));
        if (b.from != outside)
            right[at(b.from)] -= flow;
        if (b.to != outside)
            right[at(b.to)] += flow;
    }
    double worst = 0;
    for (double off : right)
        worst = std::max(worst, std::abs(off));
    massAllowed = std::max(kMassTolerance, kMassPerVolume * kFlowRounding * largest);
    return kMassPerVolume * worst;
}

void Network::Work::report(Outcome outcome, int iterations)
{
    solution.outcome = outcome;
    solution.iterations = iterations;
    settlePressures();
    double energy = 0;
    for (std::size_t l = 0; l < branches.size(); ++l) {
        const Branch& b = branches[l];
        solution.flow_m3s[l] = reported(b);
        if (b.state == State::Open)
            energy = std::max(energy, std::abs(b.loss - across(b)));
    }
    solution.massResidual_kgs = massResidual();
    solution.energyResidual_Pa = energy;
}

const Solution& Network::Work::solve()
{
    if (refresh())
        findGroups();
    if (cold) {
        evaluateAt(0);
        for (Branch& b : branches)
            if (b.state == State::Open)
                b.slope = valueAt(b, b.bound < 0 ? -kTypicalFlow : kTypicalFlow).slope;
        cold = false;
    } else {
        for (Branch& b : branches)
            b.step = 0;
        evaluateAt(0);
    }
    for (int i = 1; i <= kMostIterations; ++i) {
        direction();
        const bool full = advance(i > kStrictAfter);
        if ((balanced() || (full && polish())) && massResidual() <= massAllowed && !release()) {
            report(Outcome::Solved, i);
            return solution;
        }
    }
    report(Outcome::NotSettled, kMostIterations);
    return solution;
}

}  // namespace tapward::network
