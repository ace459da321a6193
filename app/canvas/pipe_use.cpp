// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/pipe_use.h"

#include <algorithm>
#include <deque>
#include <iterator>
#include <optional>
#include <set>
#include <utility>
#include <vector>

namespace tapward::app {

namespace {

using document::Drawing;
using document::Part;
using document::PartId;
using parts::Path;
using parts::Role;

/// One way along a pipe: into its end `to` (0 or 1).
struct Travel {
    PartId pipe = document::kNoPart;
    int to = 0;
    auto operator<=>(const Travel&) const = default;
};

/// A part with its water paths, looked up once.
struct Node {
    const Part* part = nullptr;
    Role role = Role::None;
    std::vector<std::pair<int, int>> paths;  // port indices, hub, outside
    int mixHot = Path::kOutside, mixCold = Path::kOutside;
    std::vector<std::pair<int, Travel>> away;  // port index, travel that leaves by it
    bool directed() const
    {
        return role == Role::Circulator || role == Role::CheckValve || role == Role::Tankless
               || role == Role::StorageHeater;
    }
    bool isHeater() const { return role == Role::Tankless || role == Role::StorageHeater; }
    bool isSupply() const { return role == Role::CitySupply || role == Role::DemandPump || role == Role::FreshTank; }
    /// Whether water comes out here; into the others (a pump's inlet, a tank's return) it only goes.
    bool gives(int port) const
    {
        return std::ranges::any_of(paths, [port](const auto& path) { return path.second == port; });
    }
    bool isActor() const { return role == Role::Circulator || role == Role::MotorValve; }
};

class Tracer {
public:
    explicit Tracer(const Drawing& drawing);
    std::map<PartId, PipeTrace> run();

private:
    struct Way {
        std::vector<Travel> travels;
        bool passedActor = false;
    };

    /// Port indices by which water that came in by `port` can leave; `from` may be the hub of a start.
    std::vector<int> exits(const Node& node, int port, bool throughActors) const;
    Node* nodeAt(const Travel& travel, int* port);
    std::set<Travel> flood(std::vector<Travel> starts, bool throughActors, const std::set<PartId>& walls);
    std::set<Travel> fedBy(const Travel& start);
    std::optional<Way> wayBack(const Node& heater);
    bool leadsToOutlet(const Travel& travel, PartId wall);
    void markReturn(const Node& heater);
    void mark(const std::set<Travel>& travels, PipeUse use, bool overwrite);
    std::vector<Travel> leaving(const Node& node, int port) const;

    std::map<PartId, Node> m_nodes;
    std::map<PartId, const Part*> m_pipes;
    std::map<PartId, PipeTrace> m_traces;
    std::set<PartId> m_cold;
    std::set<Travel> m_against;  ///< of the cold side's floods
};

Tracer::Tracer(const Drawing& drawing)
{
    for (const auto& part : drawing.parts) {
        const auto& kind = document::kindOf(part);
        if (kind.isPipe) {
            m_pipes[part.id] = &part;
            m_traces[part.id] = {};
            continue;
        }
        Node node;
        node.part = &part;
        if (kind.model != nullptr) {
            if (const auto model = kind.model(document::values(part))) {
                node.role = model->role;
                for (const auto& path : model->paths)
                    node.paths.emplace_back(path.from, path.to);
                if (model->mixing && model->mixing->hotPath >= 0 && model->mixing->coldPath >= 0) {
                    node.mixHot = model->paths[static_cast<std::size_t>(model->mixing->hotPath)].from;
                    node.mixCold = model->paths[static_cast<std::size_t>(model->mixing->coldPath)].from;
                }
            }
        }
        m_nodes[part.id] = std::move(node);
    }
    for (const auto& [id, pipe] : m_pipes)
        for (int end = 0; end < 2; ++end) {
            const auto& here = pipe->ends[static_cast<std::size_t>(end)];
            const auto node = m_nodes.find(here.part);
            if (node == m_nodes.end())
                continue;
            const int port = document::kindOf(*node->second.part).portIndex(here.port);
            node->second.away.emplace_back(port, Travel{id, 1 - end});
        }
}

std::vector<int> Tracer::exits(const Node& node, int port, bool throughActors) const
{
    if (node.isHeater() || node.isSupply() || node.role == Role::Outlet || (node.isActor() && !throughActors))
        return {};
    const bool oneWay = node.directed();
    std::set<int> seen{port};
    std::deque<int> open{port};
    std::vector<int> result;
    while (!open.empty()) {
        const int at = open.front();
        open.pop_front();
        for (const auto& [from, to] : node.paths)
            for (const auto& [a, b] : {std::pair{from, to}, std::pair{to, from}}) {
                if (a != at || (oneWay && a != from) || b == Path::kOutside || !seen.insert(b).second)
                    continue;
                if (node.role == Role::MixingValve && (b == node.mixHot || b == node.mixCold))
                    continue;
                open.push_back(b);
                if (b >= 0)
                    result.push_back(b);
            }
    }
    // Cold water entering a mixing valve leaves it as warm water, traced from the hot side.
    if (node.role == Role::MixingValve && port == node.mixCold)
        return {};
    return result;
}

Node* Tracer::nodeAt(const Travel& travel, int* port)
{
    const auto& end = m_pipes.at(travel.pipe)->ends[static_cast<std::size_t>(travel.to)];
    const auto node = m_nodes.find(end.part);
    if (node == m_nodes.end())
        return nullptr;
    *port = document::kindOf(*node->second.part).portIndex(end.port);
    return &node->second;
}

std::vector<Travel> Tracer::leaving(const Node& node, int port) const
{
    std::vector<Travel> result;
    for (const auto& [at, travel] : node.away)
        if (at == port)
            result.push_back(travel);
    return result;
}

std::set<Travel> Tracer::flood(std::vector<Travel> starts, bool throughActors, const std::set<PartId>& walls)
{
    std::set<PartId> pipesSeen;
    std::set<Travel> seen;
    std::deque<Travel> open(starts.begin(), starts.end());
    while (!open.empty()) {
        const Travel travel = open.front();
        open.pop_front();
        if (!pipesSeen.insert(travel.pipe).second)
            continue;
        seen.insert(travel);
        int port = -1;
        const Node* node = nodeAt(travel, &port);
        if (node == nullptr || walls.count(node->part->id) != 0)
            continue;
        for (const int exit : exits(*node, port, throughActors))
            for (const auto& next : leaving(*node, exit))
                open.push_back(next);
    }
    return seen;
}

/// What one supply feeds: its flood without the ways that lead to nothing but where other water comes out, a supply, a
/// pump or a check valve; those are kept in m_against.
std::set<Travel> Tracer::fedBy(const Travel& start)
{
    const std::set<Travel> travels = flood({start}, false, {});
    // What a way leads to, from its far end back: water is used there, or other water comes out there. What is merely
    // filled (a vessel, a drain, a loose end) says nothing.
    std::set<Travel> used, outcomes;
    const auto leadsTo = [&](const Travel& travel, const std::set<Travel>& known, const auto& isThere) {
        int port = -1;
        const Node* node = nodeAt(travel, &port);
        if (node == nullptr)
            return false;
        if (isThere(*node, port))
            return true;
        for (const int exit : exits(*node, port, false))
            for (const auto& next : leaving(*node, exit))
                if (known.count(next) != 0)
                    return true;
        return false;
    };
    const auto comesOut = [](const Node& node, int port) {
        return (node.isSupply() || node.role == Role::CheckValve || node.role == Role::Circulator) && node.gives(port);
    };
    const auto isUsed = [&](const Node& node, int port) {
        return node.isHeater() || node.role == Role::Outlet || node.role == Role::MixingValve
               || (node.isActor() && !comesOut(node, port)) || (node.isSupply() && !node.gives(port));
    };
    for (bool more = true; more;) {
        more = false;
        for (const Travel& travel : travels) {
            more = (leadsTo(travel, used, isUsed) && used.insert(travel).second) || more;
            more = (leadsTo(travel, outcomes, comesOut) && outcomes.insert(travel).second) || more;
        }
    }
    std::set<Travel> against;
    std::ranges::set_difference(outcomes, used, std::inserter(against, against.end()));
    m_against.insert(against.begin(), against.end());
    std::set<Travel> fed;
    std::ranges::set_difference(travels, against, std::inserter(fed, fed.end()));
    return fed;
}

std::optional<Tracer::Way> Tracer::wayBack(const Node& heater)
{
    using State = std::pair<Travel, bool>;
    std::map<State, State> cameFrom;
    std::deque<State> open;
    for (const auto& [from, to] : heater.paths)
        for (const auto& travel : leaving(heater, to))
            if (cameFrom.emplace(State{travel, false}, State{}).second)
                open.push_back({travel, false});
    while (!open.empty()) {
        const State state = open.front();
        open.pop_front();
        int port = -1;
        const Node* node = nodeAt(state.first, &port);
        if (node == nullptr)
            continue;
        const bool home = node == &heater || (node->role == Role::FreshTank && !node->gives(port));
        if (home && state.second) {
            Way way;
            way.passedActor = true;
            for (State s = state; s.first.pipe != document::kNoPart; s = cameFrom.at(s))
                way.travels.insert(way.travels.begin(), s.first);
            return way;
        }
        const bool passed = state.second || node->isActor();
        for (const int exit : exits(*node, port, true))
            for (const auto& next : leaving(*node, exit))
                if (cameFrom.emplace(State{next, passed}, state).second)
                    open.push_back({next, passed});
    }
    return std::nullopt;
}

bool Tracer::leadsToOutlet(const Travel& travel, PartId wall)
{
    for (const auto& reached : flood({travel}, false, {wall})) {
        int port = -1;
        const Node* node = nodeAt(reached, &port);
        if (node != nullptr && node->role == Role::Outlet)
            return true;
    }
    return false;
}

void Tracer::markReturn(const Node& heater)
{
    const auto way = wayBack(heater);
    if (!way)
        return;
    std::set<PartId> onWay;
    for (const auto& travel : way->travels)
        onWay.insert(travel.pipe);
    const auto count = way->travels.size();
    std::optional<std::size_t> lastTap, firstActor;
    std::size_t coldFrom = count;
    for (std::size_t i = 0; i + 1 < count; ++i) {
        int port = -1;
        const Node* node = nodeAt(way->travels[i], &port);
        if (node == nullptr)
            continue;
        if (node->isActor() && !firstActor)
            firstActor = i;
        for (const auto& [at, travel] : node->away) {
            if (onWay.count(travel.pipe) != 0)
                continue;
            if (m_cold.count(travel.pipe) != 0 && firstActor)
                coldFrom = std::min(coldFrom, i + 1);
            else if (!firstActor && leadsToOutlet(travel, node->part->id))
                lastTap = i;
        }
    }
    // Without a tap on the way the line counts as hot up to the first pump or valve.
    const std::size_t first = (lastTap ? *lastTap : firstActor.value_or(count)) + 1;
    if (first >= coldFrom)
        return;
    std::set<PartId> walls;
    int port = -1;
    if (const Node* node = nodeAt(way->travels[first - 1], &port))
        walls.insert(node->part->id);
    if (coldFrom < count)
        if (const Node* node = nodeAt(way->travels[coldFrom - 1], &port))
            walls.insert(node->part->id);
    mark(flood({way->travels[first]}, true, walls), PipeUse::Return, true);
    if (coldFrom < count)
        for (std::size_t i = coldFrom; i < count; ++i)
            m_traces[way->travels[i].pipe].use = PipeUse::Cold;
}

void Tracer::mark(const std::set<Travel>& travels, PipeUse use, bool overwrite)
{
    for (const auto& travel : travels) {
        auto& trace = m_traces[travel.pipe];
        if (trace.use != PipeUse::Plain && !overwrite)
            continue;
        trace = {use, travel.to == 1 ? 1 : -1};
    }
}

std::map<PartId, PipeTrace> Tracer::run()
{
    std::vector<Travel> hot, cold, upstream;
    for (const auto& [id, node] : m_nodes) {
        if (node.isSupply())
            for (const auto& [port, travel] : node.away)
                (node.gives(port) ? cold : upstream).push_back(travel);
        if (node.isHeater())
            for (const auto& [from, to] : node.paths) {
                for (const auto& travel : leaving(node, to))
                    hot.push_back(travel);
                for (const auto& travel : leaving(node, from))
                    upstream.push_back(travel);
            }
    }
    for (const auto& start : cold) {
        const auto fed = fedBy(start);
        for (const auto& travel : fed)
            m_cold.insert(travel.pipe);
        mark(fed, PipeUse::Cold, false);
    }
    mark(flood(hot, false, {}), PipeUse::Hot, false);
    for (const auto& [id, node] : m_nodes)
        if (node.isHeater())
            markReturn(node);
    // A rig without a supply: what feeds the heater or a pump is its cold side. Water comes toward them.
    std::set<Travel> toward;
    const auto fromUpstream = flood(upstream, false, {});
    for (const std::set<Travel>* travels : std::initializer_list<const std::set<Travel>*>{&m_against, &fromUpstream})
        for (const auto& travel : *travels)
            toward.insert({travel.pipe, 1 - travel.to});
    mark(toward, PipeUse::Cold, false);

    for (const auto& [id, node] : m_nodes)
        if (node.directed() || node.isSupply())
            for (const auto& [from, to] : node.paths)
                for (const auto& [port, travel] : node.away)
                    if (port >= 0 && (port == from || port == to))
                        m_traces[travel.pipe].direction = (port == to) == (travel.to == 1) ? 1 : -1;
    for (auto& [id, trace] : m_traces) {
        const Part& pipe = *m_pipes.at(id);
        if (document::kindOf(pipe).field("carries") == nullptr)
            continue;
        const std::string& carries = document::values(pipe).text("carries");
        if (carries == "cold")
            trace.use = PipeUse::Cold;
        else if (carries == "hot")
            trace.use = PipeUse::Hot;
        else if (carries == "return")
            trace.use = PipeUse::Return;
    }
    return std::move(m_traces);
}

}  // namespace

std::map<PartId, PipeTrace> tracePipes(const Drawing& drawing) { return Tracer(drawing).run(); }

std::map<PartId, PipeUse> pipeUses(const Drawing& drawing)
{
    std::map<PartId, PipeUse> uses;
    for (const auto& [id, trace] : tracePipes(drawing))
        uses[id] = trace.use;
    return uses;
}

}  // namespace tapward::app
