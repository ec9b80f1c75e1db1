import { test } from 'vitest'
import { each, isCaught } from '../help/mutations.ts'

const photos = '      - id: photos\n        kind: photo\n'
const more = '        max: 6\n        drawing: lay-out-for-a-photo\n        read_by: [staff]\n'
const surfaces = '        options: [woven, knit, loose-knit, pile, leather, fur, film]\n'
const patterns = '[solid, allover, stripe-check, single]'
const shattered = '{ when: { answer: shattered }, to: story }'

test.each(
  each([
    ['an edge to nowhere', 'to: quilt_count', 'to: quilt_cuont', 'edge-nowhere', 'quilt_cuont'],
    [
      'an edge backwards',
      shattered,
      '{ when: { answer: shattered }, to: kind }',
      'edge-nowhere',
      'kind does not come later',
    ],
    [
      'an edge on an answer that is none',
      shattered,
      '{ when: { answer: ragged }, to: story }',
      'unknown-answer',
      'ragged',
    ],
    [
      'a wrong edge, past a question that nobody comes to then',
      '          - { to: quilt_count }\n',
      '          - { to: quilt_size }\n',
      'orphan',
      'no path comes to this question',
    ],
    [
      'an edge that another takes first',
      '          - { when: { answer: one }, to: quilt_size }\n',
      '          - { to: quilt_size }\n',
      'edge-unreachable',
      'quilt_count',
    ],
    ['the last edge dropped', '          - { to: quilt_count }\n', '', 'dead-end'],
    ['a rule nobody knows', 'rule: has_a_size', 'rule: has_a_sighs', 'unknown-rule', 'has_a_sighs'],
    [
      'a guard that looks ahead',
      'rule: has_a_size',
      'rule: picture_is_single',
      'rule-reads',
      'picture_is_single',
    ],
    ['a reader nobody is', 'read_by: [tally]', 'read_by: [tully]', 'unknown-reader', 'tully'],
    ['the only reader dropped', 'read_by: [tally]', 'read_by: []', 'grammar', 'read_by'],
    [
      'a drawing that is not there',
      'drawing: pull-test',
      'drawing: push-test',
      'unknown-drawing',
      'push-test',
    ],
    [
      'a caution that is not there',
      'cautions: [soiled]',
      'cautions: [spoiled]',
      'unknown-caution',
      'spoiled',
    ],
    ['an empty range', 'max: 8', 'max: 1', 'empty-range'],
    [
      'an option twice',
      patterns,
      '[solid, allover, allover, single]',
      'duplicate-option',
      'allover',
    ],
    ['an option without words', patterns, '[solid, allover, stripes, single]', 'words-missing'],
    ['two questions of one name', 'id: weight', 'id: stretch', 'duplicate-id'],
    ['a question without its options', surfaces, '', 'field-missing', 'options'],
    [
      'a longest path too long',
      `${photos}        optional: true\n${more}`,
      `${photos}${more}`,
      'intake/limits.yaml too-long',
    ],
    ['a flow that is no YAML', 'flow: intake', 'flow: [intake', 'yaml'],
  ]),
)('%s', (_, mutation) => isCaught('intake/flow.yaml', mutation))
