export * from '../worked-out';
